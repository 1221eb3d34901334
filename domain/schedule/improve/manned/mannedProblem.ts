import type { Compiled } from '../../compile.ts';
import { type Packing, pack } from '../../search/packing.ts';
import { buildProblem } from '../../search/problem.ts';

/**
 * The work that leads to the opening with all its ways, in whole units of time, seen from one end. Ways have the numbers
 * they have in the work, tasks their own: links lead from a lower to a higher one. Hours that end, rests, dark and people
 * still at work are left out: what comes of it is an order and ways to place by, not a plan.
 */
export type MannedProblem = {
  readonly tasks: number;
  /** By task: its number in the work. */
  readonly numbers: Int32Array;
  /** By task: its first way and the one after its last. */
  readonly firstWay: Int32Array;
  readonly endWay: Int32Array;
  /** By task: where its ways with the usual people end. */
  readonly usualEnd: Int32Array;
  /** By way. */
  readonly durations: Int32Array;
  readonly ready: Int32Array;
  /** True where time runs backwards: then `ready` is what must be left after a finish. */
  readonly backwards: boolean;
  /** What its people, room and equipment are of all there are, added up. */
  readonly density: Float64Array;
  readonly packing: Packing;
  readonly before: MannedLinks;
  /** By task: the least units from its start to the end of everything. */
  readonly tails: Int32Array;
};

/** Links into task `t` are `first[t]` up to `first[t + 1]`. */
type MannedLinks = {
  readonly first: Int32Array;
  readonly task: Int32Array;
  readonly wait: Int32Array;
  /** What is tied to what: see below. */
  readonly kind: Uint8Array;
};

/** A start after a finish, a start after a start, a finish after a finish. */
export const afterFinish = 0;
export const afterStart = 1;
export const finishAfterFinish = 2;

/** Ways of a task, on average: with more of them it takes long to try all on the network too. */
const mostWays = 20;

type Link = { from: number; to: number; wait: number; kind: number };

/** Whether that says nearly all there is to say: nothing is fixed, slowed, under way or across the water. */
export function mayBeManned(compiled: Compiled): boolean {
  const { anyFixed, withCare, busy, crossing, seconds, count } = compiled;
  return (
    !anyFixed &&
    crossing === 0 &&
    seconds.length <= mostWays * count &&
    withCare.every((care) => care === 0) &&
    busy.every((of) => of.length === 0)
  );
}

/** The work seen from the start and from the end, where task `t` is `tasks - 1 - t`. */
export function mannedProblems(compiled: Compiled, unit: number): [MannedProblem, MannedProblem] {
  const { count, toOpen, release, from, seconds, wayHead, usualEnd } = compiled;
  const kept = Array.from({ length: count }, (_, task) => task).filter((t) => toOpen[t] === 1);
  const place = new Map(kept.map((task, at) => [task, at]));
  const units = (time: number) => Math.round(time / unit);
  const durations = Int32Array.from(seconds, units);
  const ready = new Int32Array(seconds.length);
  const links: Link[] = [];
  for (const [to, task] of kept.entries()) {
    for (let w = wayHead[task]!; w < wayHead[task + 1]!; w += 1) {
      ready[w] = Math.max(0, units(Math.max(release[task]!, from[w]!)));
    }
    for (let link = compiled.beforeHead[task]!; link < compiled.beforeHead[task + 1]!; link += 1) {
      const kind = compiled.beforeFromStart[link] === 1 ? afterStart : afterFinish;
      const wait = units(compiled.beforeWait[link]!);
      links.push({ from: place.get(compiled.before[link]!)!, to, wait, kind });
    }
  }
  const [density, packing] = demandsOf(compiled);
  const seen = (backwards: boolean, order: readonly number[], own: readonly Link[]) => {
    const bare = {
      tasks: order.length,
      numbers: Int32Array.from(order),
      firstWay: Int32Array.from(order, (task) => wayHead[task]!),
      endWay: Int32Array.from(order, (task) => wayHead[task + 1]!),
      usualEnd: Int32Array.from(order, (task) => usualEnd[task]!),
      durations,
      ready,
      backwards,
      density,
      packing,
      before: rows(order.length, own),
    };
    return { ...bare, tails: tailsOf(bare) };
  };
  const last = kept.length - 1;
  const turned = links.map(({ from: early, to, wait, kind }) => {
    // Two starts are two finishes when time runs backwards.
    const other = kind === afterStart ? finishAfterFinish : kind;
    return { from: last - to, to: last - early, wait, kind: other };
  });
  return [seen(false, kept, links), seen(true, kept.toReversed(), turned)];
}

function demandsOf(compiled: Compiled): [Float64Array, Packing] {
  const { seconds, useHead, useOf, useAmount, capacity } = compiled;
  const density = new Float64Array(seconds.length);
  const demands: number[][] = [];
  for (let w = 0; w < seconds.length; w += 1) {
    const row = Array.from(capacity, () => 0);
    for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
      row[useOf[use]!] = Math.min(useAmount[use]!, capacity[useOf[use]!]!);
      density[w]! += useAmount[use]! / capacity[useOf[use]!]!;
    }
    demands.push(row);
  }
  const each = { durations: Array.from(seconds, () => 0), links: [], demands };
  return [density, pack(buildProblem({ ...each, capacities: [...capacity] }))];
}

function rows(tasks: number, links: readonly Link[]): MannedLinks {
  const sorted = links.toSorted((one, other) => one.to - other.to);
  const first = new Int32Array(tasks + 1);
  for (const { to } of sorted) {
    first[to + 1]! += 1;
  }
  for (let task = 0; task < tasks; task += 1) {
    first[task + 1]! += first[task]!;
  }
  return {
    first,
    task: Int32Array.from(sorted, ({ from }) => from),
    wait: Int32Array.from(sorted, ({ wait }) => wait),
    kind: Uint8Array.from(sorted, ({ kind }) => kind),
  };
}

function tailsOf(problem: Omit<MannedProblem, 'tails'>): Int32Array {
  const { tasks, firstWay, endWay, durations, ready, backwards, before } = problem;
  const quickest = new Int32Array(tasks);
  const tails = new Int32Array(tasks);
  for (let task = 0; task < tasks; task += 1) {
    const own = durations.subarray(firstWay[task]!, endWay[task]!);
    quickest[task] = own.reduce((least, one) => Math.min(least, one));
    const left = ready.subarray(firstWay[task]!, endWay[task]!);
    tails[task] = quickest[task]! + (backwards ? left.reduce((a, b) => Math.min(a, b)) : 0);
  }
  for (let task = tasks - 1; task >= 0; task -= 1) {
    for (let at = before.first[task]!; at < before.first[task + 1]!; at += 1) {
      const early = before.task[at]!;
      const kind = before.kind[at]!;
      const length = kind === afterStart ? 0 : quickest[early]!;
      const own = kind === finishAfterFinish ? quickest[task]! : 0;
      const through = length + before.wait[at]! + tails[task]! - own;
      tails[early] = Math.max(tails[early]!, through);
    }
  }
  return tails;
}
