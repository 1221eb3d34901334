import type { Pace } from '../schedule/pace.ts';
import type { Past } from '../schedule/past.ts';
import type { Plan } from '../schedule/plan.ts';
import { plannedSeconds } from '../tasks/expected.ts';
import type { Task } from '../tasks/task.ts';
import type { Work } from '../tasks/work.ts';
import { lightMinutes } from './light/lightClock.ts';
import { pacesAsManned } from './light/taskPaces.ts';
import { compileNetwork, type Network } from './network.ts';
import { type Outlook, outlooks, overdueShare } from './outlook.ts';
import { earliestTimes, emptyRun, type Run } from './run.ts';

/** When a task ran or will run, in minutes after the start of the build. */
export type TaskRun = {
  readonly task: string;
  readonly start: number;
  readonly finish: number;
  /** On the chain of links and hand-overs that sets the opening, seen from now. */
  readonly critical: boolean;
};

/** How a build went so far and goes on by plan, from now. */
export type Course = {
  readonly runs: ReadonlyMap<string, TaskRun>;
  /** Ids of the chain that sets the opening, first to last. */
  readonly chain: readonly string[];
  /** Minutes after the start of the build. */
  readonly opening: number;
};

/**
 * How a plan goes on from `past.now`: what has happened, and from now on the earliest starts over links, hand-overs,
 * stores, rests and the dark, each task with its planned people and minutes. It is the rule of plan and forecast without
 * the doubt: where all has gone as planned, it is the plan. `work.loads` should carry the latest expected arrivals and
 * `work.dark` the nights. `times` says how many times as long as planned a task takes. Throws when plan and work do not
 * belong together.
 */
export function courseOf(
  work: Work,
  plan: Plan,
  past: Past,
  times: (task: Task) => number = () => 1,
): Course {
  const paces = pacesAsManned(work, plan, past);
  const stretches = new Map(plan.tasks.map(({ task, stretch }) => [task, stretch]));
  const happened = new Map(past.tasks.map((before) => [before.task, before]));
  const rows = new Map(work.tasks.map(({ id }, row) => [id, row]));
  const seen = outlooks(work, plan, plan.shape, past, {
    stretch: (_, { stretch }) => stretch,
    worked: ({ id }, from, to) => minutesBetween(paces[rows.get(id)!]!, from, to),
  });
  const minutes = Float64Array.from(seen, (outlook) => {
    const { task } = outlook;
    const before = happened.get(task.id);
    const stretch = stretches.get(task.id)!;
    const share = before?.status === 'done' ? 0 : 1 - (before?.part ?? 0);
    const whole = plannedSeconds(task.minutes, plan.shape, stretch * share) / 60;
    return minutesLeft(outlook, whole * times(task), stretch);
  });
  const network = compileNetwork(work, plan, seen.map(takenUpAgain));
  const run = emptyRun(network, undefined, paces);
  const opening = earliestTimes(network, minutes, run);
  const chain = chainOf(network, run);
  const critical = new Set(chain);
  const runs = work.tasks.map(({ id }, row): [string, TaskRun] => {
    const start = seen[row]!.startedAt ?? run.moments[2 * row]!;
    const finish = run.moments[2 * row + 1]!;
    return [id, { task: id, start, finish, critical: critical.has(row) }];
  });
  return { runs: new Map(runs), chain: chain.map((row) => work.tasks[row]!.id), opening };
}

/** Minutes by day and without rests that lie between two times, as the clock of the task's people counts them. */
function minutesBetween(pace: Pace | null, from: number, to: number): number {
  if (!pace) return to - from;
  return (lightMinutes(pace.clock, to * 60) - lightMinutes(pace.clock, from * 60)) / 60;
}

/** Of `whole` planned minutes what is left; for a task past its slow estimate the little that forecasts give it. */
function minutesLeft({ task, elapsed, slow }: Outlook, whole: number, stretch: number): number {
  if (elapsed === null) return whole;
  if (elapsed >= slow) return overdueShare * task.minutes.likely * stretch;
  return Math.max(0, whole - elapsed);
}

/** A stopped task begins once more: like any other, not in a rest and not where it would run into the dark. */
function takenUpAgain(outlook: Outlook): Outlook {
  return outlook.waits ? { ...outlook, startedAt: null } : outlook;
}

/** Rows of the tasks that set the opening, first to last. */
function chainOf(network: Network, { setBy, last }: Run): number[] {
  const chain = [last];
  for (let arc = setBy[last]!; arc >= 0; arc = setBy[chain.at(-1)!]!)
    chain.push(network.arcFrom[arc]! >> 1);
  return chain.reverse();
}
