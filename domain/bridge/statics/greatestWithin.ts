const golden = (Math.sqrt(5) - 1) / 2;

/**
 * Where a smooth function with at most one rise and fall between `from` and `to` is greatest, closed in on by the
 * golden section (Kiefer, 1953) where neither end is the greatest.
 */
export function greatestWithin(
  of: (at: number) => number,
  from: number,
  to: number,
): { readonly at: number; readonly value: number } {
  const ends = [from, to].map((at) => ({ at, value: of(at) }));
  const best = ends.reduce((one, other) => (other.value > one.value ? other : one));
  const near = best.at === from ? from + (to - from) / 256 : to - (to - from) / 256;
  if (of(near) <= best.value) {
    return best;
  }
  let [low, high] = [from, to];
  let one = high - golden * (high - low);
  let other = low + golden * (high - low);
  let [first, second] = [of(one), of(other)];
  for (let turn = 0; turn < 40; turn += 1) {
    if (first > second) {
      [high, other, second] = [other, one, first];
      one = high - golden * (high - low);
      first = of(one);
    } else {
      [low, one, first] = [one, other, second];
      other = low + golden * (high - low);
      second = of(other);
    }
  }
  const at = (low + high) / 2;
  return { at, value: of(at) };
}
