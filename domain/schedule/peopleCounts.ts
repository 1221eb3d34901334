import type { Need } from '../tasks/task.ts';
import { leastOf } from './whoCan.ts';

/** Sends people away, each time where the work stretches least, until the rest have room; null when they never do. */
export function fitted(
  needs: readonly Need[],
  wanted: readonly number[],
  room: number,
): number[] | null {
  const people = [...wanted];
  let sum = people.reduce((total, count) => total + count, 0);
  while (sum > room) {
    let best = -1;
    let bestStretch = Number.POSITIVE_INFINITY;
    for (const [at, need] of needs.entries()) {
      const fewer = people[at]! - 1;
      if (fewer >= leastOf(need) && need.people.usual / fewer < bestStretch) {
        best = at;
        bestStretch = need.people.usual / fewer;
      }
    }
    if (best === -1) {
      return null;
    }
    people[best]! -= 1;
    sum -= 1;
  }
  return people;
}

/**
 * The counts of people worth having for needs that may have up to `most` each, and no more than `room` together: for
 * each time the work can take, the fewest people of each need with whom it takes that. More would stand about. The
 * quickest first; each has no more people of any need than the one before it.
 */
export function countsBetween(
  needs: readonly Need[],
  most: readonly number[],
  room: number,
): number[][] {
  const stretches = new Set<number>();
  for (const [at, need] of needs.entries()) {
    for (let people = most[at]!; people > 0 && people >= leastOf(need); people -= 1) {
      stretches.add(need.people.usual / people);
    }
  }
  const counts: number[][] = [];
  let last = '';
  for (const stretch of [...stretches].sort((one, other) => one - other)) {
    const people = needs.map((need, at) => fewest(need, most[at]!, stretch));
    const same = people.join();
    const fits = people.every((count, at) => count <= most[at]!);
    if (same !== last && fits && people.reduce((sum, count) => sum + count, 0) <= room) {
      counts.push(people);
      last = same;
    }
  }
  return counts;
}

/** So much of a stretch is rounding. */
const dust = 1e-9;

function fewest(need: Need, most: number, stretch: number): number {
  return most === 0 ? 0 : Math.max(leastOf(need), Math.ceil(need.people.usual / stretch - dust));
}

/** Counts that are left out between two that are not: no quicker than the one, with no fewer people than the other. */
type Gap = { readonly quickest: readonly number[]; readonly fewest: readonly number[] };

/** So many of the counts that `countsBetween` gives: the two ends, then those halfway between, and so on; and the gaps. */
export function spread(
  counts: readonly (readonly number[])[],
  most: number,
): { readonly some: (readonly number[])[]; readonly gaps: Gap[] } {
  const last = counts.length - 1;
  const kept = new Set<number>(counts.length > 0 ? [0, last].slice(0, most) : []);
  const between: [number, number][] = [[0, last]];
  for (const [from, to] of between) {
    const half = Math.floor((from + to) / 2);
    if (to - from > 1 && kept.size < most) {
      kept.add(half);
      between.push([from, half], [half, to]);
    }
  }
  const gaps: Gap[] = [];
  for (let at = 0; at <= last; at += 1) {
    const from = at;
    while (at <= last && !kept.has(at)) at += 1;
    if (at > from) gaps.push({ quickest: counts[from]!, fewest: counts[at - 1]! });
  }
  return { some: [...kept].map((at) => counts[at]!), gaps };
}
