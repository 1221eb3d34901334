import type { Task } from '../../tasks/task.ts';
import { orderIndex } from '../orderIndex.ts';
import { expectedCrews, mayWorkAt, peopleFrom } from '../plannedCrews.ts';
import { isAtWork } from '../standing.ts';
import type { BuildState, TaskStatus } from '../state.ts';
import { type Readiness, readiness } from './readiness.ts';

/** One job on a crew's card. */
export type Job = {
  readonly task: string;
  readonly number: number;
  readonly name: string;
  /** People that the crew gives to it, by plan. */
  readonly people: number;
  /** How far the crew itself is with it. */
  readonly status: TaskStatus;
  readonly startedAt: string | null;
  readonly why: string | null;
  /** 0 to 1. */
  readonly part: number;
  /** It has to be asked for, and its zones are closed while it runs. */
  readonly keepOff: boolean;
  /** Only an inspection passes it. */
  readonly hold: boolean;
  /** The other crews of a joint task. */
  readonly with: readonly string[];
  readonly readiness: Readiness;
};

export type CrewNow = {
  /** At work or stopped. */
  readonly now: readonly Job[];
  /** What the plan gives the crew next and could start: at most two, for two half-crews. */
  readonly ready: readonly Job[];
  /** The two after those. */
  readonly next: readonly Job[];
};

/** What a crew is at, what it can start and what comes next, in planned order, seen from now (ISO 8601 UTC). */
export function crewNow(state: BuildState, crewId: string, now: string): CrewNow {
  const own = tasksInOrder(state).filter((task) => isOwn(state, task, crewId));
  const atWork: Job[] = [];
  const toCome: Job[] = [];
  for (const task of own) {
    const standing = state.tasks[task.id];
    if (!standing || standing.status === 'done') continue;
    const share = standing.shares.find(({ crew }) => crew === crewId);
    if (share?.status === 'done') continue;
    const begun = share?.status === 'at-work' || share?.status === 'stopped';
    (begun ? atWork : toCome).push(jobOf(state, task, crewId, now));
  }
  const ready = toCome.filter((job) => job.readiness.ready).slice(0, 2);
  const next = toCome.filter((job) => !ready.includes(job)).slice(0, 2);
  return { now: atWork, ready, next };
}

function tasksInOrder({ plan, work }: BuildState): Task[] {
  const { task } = orderIndex(work);
  if (!plan) return work.tasks;
  return plan.tasks.flatMap((planned) => task.get(planned.task) ?? []);
}

function isOwn(state: BuildState, task: Task, crew: string): boolean {
  const told = state.tasks[task.id]?.shares.some((share) => share.crew === crew) ?? false;
  return told || mayWorkAt(state, task, crew);
}

function jobOf(state: BuildState, task: Task, crew: string, now: string): Job {
  const share = state.tasks[task.id]?.shares.find((each) => each.crew === crew);
  return {
    task: task.id,
    number: task.number,
    name: task.name,
    people: peopleFrom(state.plan, task, crew),
    status: share?.status ?? 'to-come',
    startedAt: share?.startedAt ?? null,
    why: share?.why ?? null,
    part: share?.part ?? 0,
    keepOff: task.keepOff,
    hold: task.hold !== undefined,
    with: expectedCrews(state.plan, task).named.filter((other) => other !== crew),
    readiness: joins(state, task.id, crew)
      ? { ready: true, waitsFor: [] }
      : readiness(state, task.id, now),
  };
}

/** Whether the others of a joint task are at it already: this crew may join them, whatever the task itself waited for. */
function joins(state: BuildState, task: string, crewId: string): boolean {
  const standing = state.tasks[task];
  if (!standing || !isAtWork(standing) || state.halt) return false;
  return standing.shares.some(({ crew, status }) => crew === crewId && status === 'to-come');
}
