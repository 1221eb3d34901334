/**
 * Places labels that want to stand at `wishes` (rising) so that any two are at least `gap` apart and all lie between
 * `from` and `to`, each as near to its wish as the others let it. Labels that cannot all fit run past `to`.
 */
export function spreadApart(
  wishes: readonly number[],
  gap: number,
  from: number,
  to: number,
): number[] {
  // Less the gaps in front of each, labels may meet but not cross: neighbours that would are pooled at their mean.
  const pools: { sum: number; count: number }[] = [];
  const mean = (pool: { sum: number; count: number } | undefined): number =>
    pool ? pool.sum / pool.count : Number.NEGATIVE_INFINITY;
  wishes.forEach((wish, index) => {
    let pool = { sum: wish - index * gap, count: 1 };
    while (mean(pools.at(-1)) >= mean(pool)) {
      const before = pools.pop()!;
      pool = { sum: before.sum + pool.sum, count: before.count + pool.count };
    }
    pools.push(pool);
  });
  const highest = Math.max(from, to - gap * (wishes.length - 1));
  const places = pools.flatMap((pool) =>
    new Array<number>(pool.count).fill(Math.min(highest, Math.max(from, mean(pool)))),
  );
  return places.map((place, index) => place + index * gap);
}
