/** 1, 2 ... count. */
export function numbers(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at + 1);
}

/** Bays in lots of `size`, from the front or from the rear; each lot in rising order. */
export function lotsOf(bays: readonly number[], size: number, rearFirst: boolean): number[][] {
  const inOrder = rearFirst ? [...bays].reverse() : bays;
  const lots: number[][] = [];
  for (let at = 0; at < inOrder.length; at += size) {
    lots.push(inOrder.slice(at, at + size).sort((a, b) => a - b));
  }
  return lots;
}
