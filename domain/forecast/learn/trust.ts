import type { Tick } from './ticks.ts';

/** Finishes of one crew that are told to lie closer together than this were ticked in one go. Minutes. */
const together = 1.5;

/**
 * How far the minutes of each finished tick may be taken for pace, 0 to 1, by task. A chief who ticks four jobs at once
 * says when he looked at the phone, not when each was done: that teaches his habits, not his crew's pace. Of n ticks
 * of one crew in a row, each within 1.5 minutes of the one before and nearer to it than half its own `expected`
 * minutes, each counts 1 / n^2: all n together say less than one that was ticked alone. Common practice, no source.
 */
export function trustOf(
  ticks: readonly Tick[],
  expected: (task: string) => number,
): ReadonlyMap<string, number> {
  const trust = new Map<string, number>();
  const byCrew = new Map<string, Tick[]>();
  for (const tick of ticks) {
    if (tick.finish === null) continue;
    for (const crew of tick.crews.length > 0 ? tick.crews : ['']) {
      byCrew.set(crew, [...(byCrew.get(crew) ?? []), tick]);
    }
  }
  for (const own of byCrew.values()) {
    const inTime = own.toSorted(
      (one, other) => one.finish! - other.finish! || (one.task < other.task ? -1 : 1),
    );
    let begin = 0;
    for (let k = 1; k <= inTime.length; k++) {
      const next = inTime[k];
      const gap = next ? next.finish! - inTime[k - 1]!.finish! : Number.POSITIVE_INFINITY;
      if (next && gap <= Math.min(together, expected(next.task) / 2)) continue;
      const batch = inTime.slice(begin, k);
      for (const { task } of batch) {
        trust.set(task, Math.min(trust.get(task) ?? 1, 1 / batch.length ** 2));
      }
      begin = k;
    }
  }
  return trust;
}
