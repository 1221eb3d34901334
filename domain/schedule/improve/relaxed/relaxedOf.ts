import type { Compiled } from '../../compile.ts';
import type { HeadsAndTails } from '../../headsAndTails.ts';
import { resourceGroups } from '../../resourceGroups.ts';
import { buildProblem, type Link, type Problem } from '../../search/problem.ts';

/** A plain problem that is never longer than the work: whole units of time from `origin` on, both in seconds. */
export type Relaxed = { readonly problem: Problem; readonly unit: number; readonly origin: number };

/** Most units of time up to the opening: with more of them the exact part is slow. */
const mostUnits = 3000;

/**
 * Lays the work out with more freedom than it has: every task takes the least seconds and, of each resource, the fewest
 * that any of its ways asks for. Times are rounded down; whatever keeps to the work, with its moments rounded down too,
 * keeps to this, since tasks at work in the same unit are all at work at its end. `opening` is that of a known schedule,
 * in seconds.
 */
export function relaxedOf(compiled: Compiled, times: HeadsAndTails, opening: number): Relaxed {
  const { count, beforeHead, before, beforeFromStart, beforeWait } = compiled;
  const { quickest, head, rest, tail } = times;
  // What can start after the opening says nothing about it.
  const kept = Array.from({ length: count }, (_, task) => task).filter((task) => tail[task]! >= 0);
  const place = new Map(kept.map((task, at) => [task, at + 1]));
  // With nothing left that leads to the opening there is nothing to say about it.
  const heads = kept.map((task) => head[task]!);
  const origin = heads.length === 0 ? 0 : Math.min(...heads);
  const unit = unitFor(compiled, kept, times, origin, opening);
  const groups = resourceGroups(compiled);
  const links: Link[] = [];
  for (const [at, task] of kept.entries()) {
    const to = at + 1;
    links.push({ from: 0, to, lag: Math.floor((head[task]! - origin) / unit) });
    for (let link = beforeHead[task]!; link < beforeHead[task + 1]!; link += 1) {
      const early = before[link]!;
      const from = place.get(early);
      const length = beforeFromStart[link] === 1 ? 0 : quickest[early]!;
      if (from !== undefined) {
        links.push({ from, to, lag: Math.floor((length + beforeWait[link]!) / unit) });
      }
    }
  }
  // What need not be finished by the opening takes no time and holds nothing.
  const counts = (task: number) => rest[task]! >= 0;
  const problem = buildProblem({
    durations: [0, ...kept.map((task) => (counts(task) ? Math.floor(quickest[task]! / unit) : 0))],
    links,
    capacities: groups.map((group) => capacityOf(compiled, group)),
    demands: [
      groups.map(() => 0),
      ...kept.map((task) =>
        groups.map((group) => (counts(task) ? fewest(compiled, task, group) : 0)),
      ),
    ],
  });
  return { problem, unit, origin };
}

/** The unit in which nothing has to be rounded, or a coarser one where that would be too fine. */
function unitFor(
  compiled: Compiled,
  kept: readonly number[],
  { quickest, head }: HeadsAndTails,
  origin: number,
  opening: number,
): number {
  let unit = 0;
  for (const task of kept) {
    unit = divisor(divisor(unit, quickest[task]!), head[task]! - origin);
    for (let link = compiled.beforeHead[task]!; link < compiled.beforeHead[task + 1]!; link += 1) {
      unit = divisor(unit, Math.abs(compiled.beforeWait[link]!));
    }
  }
  return Math.max(1, unit, Math.ceil((opening - origin) / mostUnits));
}

function divisor(one: number, other: number): number {
  return other === 0 ? one : divisor(other, one % other);
}

function capacityOf({ capacity }: Compiled, group: ReadonlySet<number>): number {
  return [...group].reduce((sum, of) => sum + capacity[of]!, 0);
}

/** The fewest of a group of resources that the task holds in any of its ways. */
function fewest(compiled: Compiled, task: number, group: ReadonlySet<number>): number {
  const { wayHead, useHead, useOf, useAmount } = compiled;
  let least = capacityOf(compiled, group);
  for (let w = wayHead[task]!; w < wayHead[task + 1]!; w += 1) {
    let held = 0;
    for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
      held += group.has(useOf[use]!) ? useAmount[use]! : 0;
    }
    least = Math.min(least, held);
  }
  return least;
}
