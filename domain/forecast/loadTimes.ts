import type { Work } from '../tasks/work.ts';
import type { Seen } from './moves/seen.ts';
import type { Network } from './network.ts';
import type { Run } from './run.ts';
import { simulate } from './simulate.ts';
import { quantileOfSorted } from './summary.ts';

/** A spread of minutes. */
export type Spread = { readonly p10: number; readonly p50: number; readonly p90: number };

/** When a load is wanted and how late it may be, over the draws of a forecast. Minutes after the start of the build. */
export type LoadTimes = {
  readonly load: string;
  /** When the first task that uses it could start but for this load. */
  readonly wanted: Spread;
  /** Later than this it makes the opening of that draw later. Null where nothing that leads to the opening uses it. */
  readonly latest: Spread | null;
  /** Minutes that the opening of a draw is later when the load comes then instead, on average. */
  readonly laterBy: (arrives: number) => number;
};

/**
 * When each load is wanted, seen from now, by drawing the build over and over: `runs` draws with this `seed`, those of
 * the forecast. Loads that are here, or that work already begun uses, are left out; `here` names the ones that are in.
 */
export function loadTimes(
  seen: Seen,
  {
    runs,
    seed,
    here,
  }: { readonly runs: number; readonly seed: number; readonly here: Iterable<string> },
): LoadTimes[] {
  const { work, plan, past, doubts } = seen;
  const asked = loadsToCome(seen, new Set(here));
  if (asked.length === 0) return [];
  const wanted = asked.map(() => new Float64Array(runs));
  const latest = asked.map(() => new Float64Array(runs));
  const slack = new Float64Array(work.tasks.length);
  let done = 0;
  simulate(work, plan, {
    runs,
    seed,
    shape: plan.shape,
    askedFor: null,
    past,
    doubts,
    onRun: (run, network) => {
      latestStarts(run, network, slack);
      for (const [row, { users }] of asked.entries()) {
        let first = Number.POSITIVE_INFINITY;
        let last = Number.POSITIVE_INFINITY;
        for (const { task, from } of users) {
          first = Math.min(first, readyBut(run, network, task, from));
          last = Math.min(last, slack[task]!);
        }
        wanted[row]![done] = first;
        latest[row]![done] = last;
      }
      done += 1;
    },
  });
  return asked.map(({ load }, row) => {
    const bounds = latest[row]!.sort();
    return {
      load,
      wanted: spreadOf(wanted[row]!.sort()),
      latest: Number.isFinite(bounds.at(-1)) ? spreadOf(bounds) : null,
      laterBy: (arrives) =>
        bounds.reduce((sum, bound) => sum + Math.max(0, arrives - bound), 0) / bounds.length,
    };
  });
}

type User = {
  /** Position in the work. */
  readonly task: number;
  /** Not before, were the load already here: now, its other loads, or what else the plan waits for. */
  readonly from: number;
};

function loadsToCome(
  { work, plan, past }: Seen,
  here: ReadonlySet<string>,
): { readonly load: string; readonly users: readonly User[] }[] {
  const begun = new Set(past.tasks.map(({ task }) => task));
  const releases = new Map(plan.tasks.map(({ task, release }) => [task, release]));
  const arrivals = new Map(work.loads.map(({ id, arrives }) => [id, arrives]));
  const latestOf = (loads: readonly string[]) =>
    loads.reduce((late, load) => Math.max(late, arrivals.get(load) ?? 0), past.now);
  return work.loads
    .filter(({ id }) => !here.has(id))
    .map(({ id }) => ({ load: id, users: usersOf(work, id) }))
    .filter(({ users }) => users.length > 0 && !users.some(({ own }) => begun.has(own.id)))
    .map(({ load, users }) => ({
      load,
      users: users.map(({ own, task }) => {
        const release = releases.get(own.id) ?? 0;
        // A release beyond every load of the task is a crew that comes on, or a start that is fixed.
        const besides = release > latestOf(own.loads) + 1e-6 ? release : 0;
        const others = own.loads.filter((other) => other !== load);
        return { task, from: Math.max(besides, latestOf(others)) };
      }),
    }));
}

function usersOf({ tasks }: Work, load: string) {
  return tasks.flatMap((own, task) => (own.loads.includes(load) ? [{ own, task }] : []));
}

/** When a task could start in a run over links and hand-overs, not before `from`. */
function readyBut({ moments }: Run, network: Network, task: number, from: number): number {
  const { arcAt, arcFrom, arcWait } = network;
  let ready = from;
  for (let arc = arcAt[task]!; arc < arcAt[task + 1]!; arc += 1) {
    ready = Math.max(ready, moments[arcFrom[arc]!]! + arcWait[arc]!);
  }
  return ready;
}

/** Latest start of every task that keeps the opening of a run, each as long as it was; infinite where none hangs on it. */
function latestStarts({ moments, last }: Run, network: Network, starts: Float64Array): void {
  const { order, arcAt, arcFrom, arcWait, goals } = network;
  const length = (task: number) => moments[2 * task + 1]! - moments[2 * task]!;
  starts.fill(Number.POSITIVE_INFINITY);
  const opening = moments[2 * last + 1]!;
  for (const goal of [...goals, last]) starts[goal] = opening - length(goal);
  for (let k = order.length - 1; k >= 0; k -= 1) {
    const task = order[k]!;
    for (let arc = arcAt[task]!; arc < arcAt[task + 1]!; arc += 1) {
      const moment = arcFrom[arc]!;
      const from = moment >> 1;
      const bound = starts[task]! - arcWait[arc]! - (moment % 2 === 1 ? length(from) : 0);
      if (bound < starts[from]!) starts[from] = bound;
    }
  }
}

function spreadOf(sorted: Float64Array): Spread {
  const [p10, p50, p90] = [0.1, 0.5, 0.9].map((p) => quantileOfSorted(sorted, p));
  return { p10: p10!, p50: p50!, p90: p90! };
}
