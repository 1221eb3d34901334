/** "8 to 11", "3, 5", "8": numbers of bays or sections in rising order. */
export function numbersShort(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((a, b) => a - b);
  const runs: number[][] = [];
  for (const number of sorted) {
    const run = runs.at(-1);
    if (run && run.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  return runs
    .map((run) => (run.length > 1 ? `${run[0]} to ${run.at(-1)}` : String(run[0])))
    .join(', ');
}

/** "a, b and c" */
export function listed(items: readonly string[]): string {
  return items.length < 2
    ? (items[0] ?? '')
    : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
