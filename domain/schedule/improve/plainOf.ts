import type { Compiled } from '../compile.ts';
import { buildProblem, type Link, type Problem } from '../search/problem.ts';

/** The work that leads to the opening as a plain problem: one way for each task, whole units of time from `origin` on. */
export type PlainView = {
  readonly problem: Problem;
  /** Seconds. */
  readonly unit: number;
  readonly origin: number;
  /** By task of the problem: its number in the work; -1 for the source that releases wait for. */
  readonly numbers: Int32Array;
};

/**
 * Lays the work out with the ways given, times rounded to the nearest unit. Hours that end, rests, dark and people still
 * at work are left out: what the plain problem gives is an order to place by, not a plan.
 */
export function plainOf(compiled: Compiled, way: Int32Array, unit: number): PlainView {
  const { count, toOpen, release, from, seconds, useHead, useOf, useAmount, capacity } = compiled;
  const kept = Array.from({ length: count }, (_, task) => task).filter(
    (task) => toOpen[task] === 1,
  );
  const ready = (task: number) => Math.max(release[task]!, from[way[task]!]!);
  const origin = kept.reduce((least, task) => Math.min(least, ready(task)), Number.MAX_VALUE);
  const units = (time: number) => Math.round(time / unit);
  const place = new Map(kept.map((task, at) => [task, at + 1]));
  const links: Link[] = [];
  const demands: number[][] = [Array.from(capacity, () => 0)];
  for (const [at, task] of kept.entries()) {
    const row = Array.from(capacity, () => 0);
    for (let use = useHead[way[task]!]!; use < useHead[way[task]! + 1]!; use += 1) {
      row[useOf[use]!] = useAmount[use]!;
    }
    demands.push(row);
    const waits = units(ready(task) - origin);
    if (waits > 0) {
      links.push({ from: 0, to: at + 1, lag: waits });
    }
    for (let link = compiled.beforeHead[task]!; link < compiled.beforeHead[task + 1]!; link += 1) {
      const before = compiled.before[link]!;
      const length = compiled.beforeFromStart[link] ? 0 : units(seconds[way[before]!]!);
      const lag = length + units(compiled.beforeWait[link]!);
      links.push({ from: place.get(before)!, to: at + 1, lag });
    }
  }
  return {
    problem: buildProblem({
      durations: [0, ...kept.map((task) => units(seconds[way[task]!]!))],
      links,
      capacities: [...capacity],
      demands,
    }),
    unit,
    origin,
    numbers: Int32Array.from([-1, ...kept]),
  };
}

/**
 * The unit in which a plain problem says all there is to say about the work, in seconds: each task has one way, and
 * nothing but links, releases, people and room matters. Null where that is not so.
 */
export function exactUnit(compiled: Compiled): number | null {
  const { count, toOpen, wayHead, seconds, release, from, to, pace, goal } = compiled;
  if (
    compiled.anyFixed ||
    compiled.crossing > 0 ||
    compiled.settledOpening > 0 ||
    compiled.busy.some((of) => of.length > 0)
  ) {
    return null;
  }
  let unit = 0;
  for (let task = 0; task < count; task += 1) {
    const w = wayHead[task]!;
    if (toOpen[task] === 0) {
      continue;
    }
    // Only where each task must be finished by the opening is the opening the end of everything.
    let finished = goal[task] === 1;
    for (let at = compiled.afterHead[task]!; at < compiled.afterHead[task + 1]!; at += 1) {
      const next = compiled.after[at]!;
      finished ||=
        toOpen[next] === 1 && compiled.afterFromStart[at] === 0 && compiled.afterWait[at]! >= 0;
      unit = divisor(unit, Math.abs(compiled.afterWait[at]!));
    }
    if (!finished || wayHead[task + 1]! - w > 1 || pace[w] !== null || to[w]! < Number.MAX_VALUE) {
      return null;
    }
    unit = divisor(divisor(unit, seconds[w]!), Math.max(release[task]!, from[w]!));
  }
  return unit;
}

function divisor(one: number, other: number): number {
  return other === 0 ? one : divisor(other, one % other);
}
