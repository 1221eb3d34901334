import type { Past, PastTask } from '../schedule/past.ts';
import type { Plan, PlannedTask } from '../schedule/plan.ts';
import type { Task } from '../tasks/task.ts';
import type { Work } from '../tasks/work.ts';
import type { Shape } from './forecast.ts';
import { cdf } from './spread.ts';

/**
 * A task that has already taken longer than its slow estimate tells nothing about its end: it is given
 * this share of its likely minutes more, from now. Common practice, no source: small, but never none.
 */
export const overdueShare = 0.1;

/** What is still open about one task, seen from now. Minutes after the start of the build. */
export type Outlook = {
  readonly task: Task;
  /** True when it may not go on before its links and hand-overs let it. */
  readonly waits: boolean;
  /** When it truly started; null when it has not. */
  readonly startedAt: number | null;
  /** The drawn minutes count from here or, for a task that waits, from when it may go on, if later. */
  readonly from: number;
  /** Finishes no earlier than this: a task at work now has not finished yet. */
  readonly leastFinish: number;
  /** Minutes drawn: `quick` and no more than `slow`, with the planned people. */
  readonly quick: number;
  readonly slow: number;
  /** Share of the curve already ruled out by how long it has lasted, 0 to 1. */
  readonly ruledOut: number;
  /**
   * Minutes that a task at work has lasted, as `Eyes` count them, where they are left to the draw: those drawn beyond
   * them count from now. Else null.
   */
  readonly elapsed: number | null;
};

/** How a forecast with shared factors looks at the tasks: it rules out in each draw, by the factors of that draw. */
export type Eyes = {
  /** Minutes with the people there are now over minutes with the usual people. */
  readonly stretch: (task: Task, planned: PlannedTask) => number;
  /** Minutes that a task has been at work between two times. */
  readonly worked: (task: Task, from: number, to: number) => number;
};

/** Looks at every task of the work from now, in the order of `work.tasks`. Throws when the plan leaves a task out. */
export function outlooks(
  work: Work,
  plan: Plan,
  shape: Shape,
  past?: Past,
  eyes?: Eyes,
): Outlook[] {
  const planned = new Map(plan.tasks.map((task) => [task.task, task]));
  const arrivals = new Map(work.loads.map((load) => [load.id, load.arrives]));
  const happened = new Map(past?.tasks.map((task) => [task.task, task]));
  const now = past?.now ?? 0;
  return work.tasks.map((task) => {
    const own = planned.get(task.id);
    if (!own) throw new Error(`The plan leaves out task ${task.id}.`);
    const before = happened.get(task.id);
    if (before) return begun(task, own, before, now, shape, eyes);
    // A load told late since the plan was made binds too; an early one frees nothing without a new plan.
    const stores = task.loads.map((load) => arrivals.get(load) ?? 0);
    const from = Math.max(0, now, own.release, ...stores);
    return {
      ...whole(task, eyes?.stretch(task, own) ?? own.stretch),
      waits: true,
      startedAt: null,
      from,
    };
  });
}

function whole(task: Task, stretch: number) {
  const { quick, slow } = task.minutes;
  return {
    task,
    quick: quick * stretch,
    slow: slow * stretch,
    ruledOut: 0,
    leastFinish: 0,
    elapsed: null,
  };
}

function begun(
  task: Task,
  planned: PlannedTask,
  before: PastTask,
  now: number,
  shape: Shape,
  eyes: Eyes | undefined,
): Outlook {
  const stretch = eyes?.stretch(task, planned) ?? planned.stretch;
  const startedAt = before.start;
  if (before.status === 'done') {
    const finish = before.finish ?? now;
    const over = { quick: 0, slow: 0, ruledOut: 0, leastFinish: finish, elapsed: null };
    return { ...over, task, waits: false, startedAt, from: finish };
  }
  // A told part says how much is left, whatever the clock says.
  const left = 1 - (before.part ?? 0);
  if (before.status === 'stopped') {
    return { ...whole(task, stretch * left), waits: true, startedAt, from: now };
  }
  const atWork = { waits: false, startedAt };
  if (before.part) {
    return { ...whole(task, stretch * left), ...atWork, from: now, leastFinish: now };
  }
  if (eyes) {
    const elapsed = Math.max(0, eyes.worked(task, startedAt, now));
    return { ...whole(task, stretch), ...atWork, from: now, leastFinish: now, elapsed };
  }
  const elapsed = Math.max(0, now - startedAt);
  const usual = stretch > 0 ? elapsed / stretch : Number.POSITIVE_INFINITY;
  if (usual >= task.minutes.slow) {
    const rest = overdueShare * task.minutes.likely * stretch;
    const sure = { quick: rest, slow: rest, ruledOut: 0, elapsed: null };
    return { ...atWork, ...sure, task, from: now, leastFinish: now };
  }
  return {
    ...whole(task, stretch),
    ...atWork,
    from: startedAt,
    leastFinish: now,
    ruledOut: cdf(shape, task.minutes, usual),
  };
}
