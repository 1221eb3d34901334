import type { Tick } from './ticks.ts';

/** Finishes of one crew that are told to lie closer together than this may have been ticked in one go. Minutes. */
const together = 1.5;

/** Nobody is done in less than this share of the quick minutes. */
const tooQuick = 0.5;

/**
 * How far the minutes of each finished tick may be taken for pace, 0 to 1, by task. A chief who ticks four jobs at once
 * says when he looked at the phone, not when each was done: that teaches his habits, not his crew's pace. It shows in
 * ticks of one crew in a row, each within 1.5 minutes of the one before, of which at least one took less than half of
 * its `quick` minutes. Each of n such ticks counts 1 / n^2: all together less than one that was ticked alone. Ticks that
 * merely come close together are left alone, because quick work does too. Common practice, no source.
 */
export function trustOf(
  ticks: readonly Tick[],
  quick: (task: string) => number,
): ReadonlyMap<string, number> {
  const trust = new Map<string, number>();
  const byCrew = new Map<string, Tick[]>();
  for (const tick of ticks) {
    if (tick.finish === null) continue;
    trust.set(tick.task, 1);
    for (const crew of tick.crews.length > 0 ? tick.crews : ['']) {
      byCrew.set(crew, [...(byCrew.get(crew) ?? []), tick]);
    }
  }
  const hasty = ({ task, start, finish }: Tick) => finish! - start < tooQuick * quick(task);
  for (const own of byCrew.values()) {
    for (const row of rowsOf(own)) {
      if (row.length === 1 || !row.some(hasty)) continue;
      for (const { task } of row) trust.set(task, Math.min(trust.get(task)!, 1 / row.length ** 2));
    }
  }
  return trust;
}

/** Ticks in order of their finish, cut where more than a moment lies between two. */
function rowsOf(ticks: readonly Tick[]): Tick[][] {
  const inTime = ticks.toSorted(
    (one, other) => one.finish! - other.finish! || (one.task < other.task ? -1 : 1),
  );
  const rows: Tick[][] = [];
  for (const tick of inTime) {
    const row = rows.at(-1);
    const last = row?.at(-1);
    if (row && last && tick.finish! - last.finish! <= together) row.push(tick);
    else rows.push([tick]);
  }
  return rows;
}
