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
  /** Earlier work of the plan that waits, and whose people this would take: it is out of turn. */
  readonly ahead?: { readonly name: string; readonly sentence: string };
};

export type CrewNow = {
  /** At work or stopped. */
  readonly now: readonly Job[];
  /** What the plan gives the crew next and could start: at most two, for two half-crews, with people for both. */
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
  const ready = withPeopleFor(state, crewId, atWork, toCome);
  const next = toCome.filter(({ task }) => !ready.some((job) => job.task === task)).slice(0, 2);
  return { now: atWork, ready, next };
}

/** The jobs to come that can start now, as far as people go; each says which earlier one it would leave short. */
function withPeopleFor(
  state: BuildState,
  crewId: string,
  atWork: readonly Job[],
  toCome: readonly Job[],
): Job[] {
  const busy = atWork.filter(({ status }) => status === 'at-work');
  const fit = state.crews[crewId]?.fit ?? Number.POSITIVE_INFINITY;
  let free = busy.reduce((left, { people }) => left - people, fit);
  let kept = 0;
  let waiting: Job | undefined;
  const ready: Job[] = [];
  for (const job of toCome) {
    if (ready.length === 2) break;
    if (!job.readiness.ready) {
      // Without a plan there is no turn to keep.
      if (state.plan) {
        waiting ??= job;
        kept = Math.max(kept, job.people);
      }
    } else if (ready.length === 0 || job.people <= free) {
      ready.push(waiting && job.people > free - kept ? { ...job, ahead: aheadOf(waiting) } : job);
      free -= job.people;
    }
  }
  return ready;
}

function aheadOf({ name, readiness: { waitsFor } }: Job): NonNullable<Job['ahead']> {
  return { name, sentence: waitsFor[0]?.sentence ?? '' };
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
