import { type Refusal, refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import { plannedSeconds } from '../tasks/expected.ts';
import type { Task } from '../tasks/task.ts';
import type { Manning } from './manning.ts';
import { finishAt } from './pace.ts';
import type { Past, PastTask } from './past.ts';
import { secondsNotBefore } from './seconds.ts';
import { stretchOf } from './ways.ts';

/** A task whose start is past: done, or at work and running on. Seconds after the start of the build. */
export type Settled = {
  readonly start: number;
  readonly finish: number;
  readonly atWork: boolean;
  readonly crews: PastTask['crews'];
  readonly stretch: number;
};

/** What has happened, by task id. `left` is the share still to be done of stopped tasks. */
export type SettledPast = {
  /** Seconds; nothing new starts before. */
  readonly now: number;
  readonly tasks: ReadonlyMap<string, Settled>;
  readonly left: ReadonlyMap<string, number>;
};

/**
 * Fixes what is done; lets what is at work run on until it has had its expected minutes, or from now what a told part
 * leaves of them, and no less than until now; and takes from stopped tasks the part that is done.
 * Refuses a past that names tasks the work does not have.
 */
export function settlePast(manning: Manning, past: Past | undefined): Result<SettledPast, Refusal> {
  const tasks = new Map<string, Settled>();
  const left = new Map<string, number>();
  const now = past ? Math.max(0, secondsNotBefore(past.now)) : 0;
  const byId = new Map(manning.work.tasks.map((task) => [task.id, task]));
  for (const happened of past?.tasks ?? []) {
    const task = byId.get(happened.task);
    if (!task) {
      const sentence = `Task ${happened.task} has been worked on and is not in the order of work. Put it back, then plan again.`;
      return bad(refusal('task-unknown', sentence, [happened.task]));
    }
    if (happened.status === 'stopped') {
      left.set(task.id, 1 - (happened.part ?? 0));
    } else {
      tasks.set(task.id, settle(manning, task, happened, now));
    }
  }
  return good({ now, tasks, left });
}

function settle(manning: Manning, task: Task, happened: PastTask, now: number): Settled {
  const stretch = stretchAsManned(task, happened.crews);
  const start = Math.round(happened.start * 60);
  const { crews } = happened;
  if (happened.status === 'done') {
    const finish = Math.max(start, Math.round((happened.finish ?? happened.start) * 60));
    return { start, finish, atWork: false, crews, stretch };
  }
  const whole = plannedSeconds(task.minutes, manning.shape, stretch);
  const at = crews.filter(({ people }) => people > 0).map(({ crew }) => crew);
  const pace = manning.paceOf(task, manning.crews ? at : [], true);
  const from = happened.part ? now : start;
  const left = happened.part ? Math.round(whole * (1 - happened.part)) : whole;
  const finish = Math.max(now, pace ? finishAt(pace, from, left) : from + left);
  return { start, finish, atWork: true, crews, stretch };
}

/** Minutes with the people who have begun a task over minutes with the usual people. */
export function stretchAsManned({ needs }: Task, crews: PastTask['crews']): number {
  return stretchOf(needs, needs.length === crews.length ? crews.map(({ people }) => people) : []);
}
