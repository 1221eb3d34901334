import type { Plan } from '../schedule/plan.ts';
import type { Task } from '../tasks/task.ts';
import { expectedCrews } from './plannedCrews.ts';
import { type ShareStanding, shareOf } from './share.ts';
import type { HoldStatus, Inspection, TaskState, TaskStatus, TaskTell } from './state.ts';

/** A task of which nothing has been told. */
export function freshTask(task: Task): TaskState {
  return {
    status: 'to-come',
    attempt: 1,
    startedAt: null,
    finishedAt: null,
    why: null,
    part: 0,
    shares: [],
    disputed: false,
    flagged: false,
    flaggedFor: [],
    hold: task.hold ? 'open' : 'none',
    passedBy: null,
    ownWork: false,
    values: {},
    failures: 0,
    tells: [],
    inspections: [],
    earlier: [],
  };
}

/** Whether anything was ever told or found about a task. */
export function wasTold({ tells, inspections, earlier }: TaskState): boolean {
  return tells.length > 0 || inspections.length > 0 || earlier.length > 0;
}

/** Whether what happened then belongs to an attempt that was closed since, and so says nothing of the present one. */
export function isOfEarlierAttempt({ earlier }: TaskState, happenedAt: string): boolean {
  const closedAt = earlier.at(-1)?.closedAt;
  return closedAt !== undefined && Date.parse(happenedAt) < Date.parse(closedAt);
}

/** Whether people are at work at it: also while only some crews of a joint task have told that they stopped. */
export function isAtWork({ status, shares }: TaskState): boolean {
  return status === 'at-work' || shares.some((share) => share.status === 'at-work');
}

/**
 * The state of a task, derived anew from its live tells and inspections: the one place where a status is made.
 * A task is done when each expected crew told so; where one crew is enough, when whoever took it told so.
 * A hold is done while its last inspection is a pass; tells from before the last inspection no longer count for it.
 */
export function standingOf(state: TaskState, task: Task, plan: Plan | null): TaskState {
  const found = task.hold ? holdStanding(state.inspections) : openOrdinary(state);
  const last = task.hold ? state.inspections.at(-1) : undefined;
  const tells = last ? state.tells.filter((tell) => isSince(tell, last)) : state.tells;
  const told = toldStanding(tells, task, plan);
  const rest = {
    ...state,
    ...found,
    flagged: state.flaggedFor.length > 0,
    shares: told.shares,
    disputed: told.disputed,
  };
  if (last?.kind === 'passed') {
    const before = toldStanding(state.tells, task, plan);
    const { startedAt } = before;
    return { ...rest, status: 'done', startedAt, finishedAt: last.at, why: null, part: 1 };
  }
  const { status, startedAt, finishedAt, part } = told;
  return { ...rest, status, startedAt, finishedAt, why: told.why ?? found.why, part };
}

function isSince(tell: TaskTell, last: Inspection): boolean {
  return tell.entry > last.entry && Date.parse(tell.at) >= Date.parse(last.at);
}

type Found = Pick<
  TaskState,
  'attempt' | 'hold' | 'passedBy' | 'ownWork' | 'values' | 'failures' | 'why'
>;

function openOrdinary(state: TaskState): Found {
  const attempt = 1 + state.earlier.length;
  const none: HoldStatus = 'none';
  return {
    attempt,
    hold: none,
    passedBy: null,
    ownWork: false,
    values: {},
    failures: 0,
    why: null,
  };
}

function holdStanding(inspections: readonly Inspection[]): Found {
  const last = inspections.at(-1);
  const read = inspections.findLast(({ kind }) => kind !== 'lapsed');
  const passed = last?.kind === 'passed';
  return {
    attempt: 1 + inspections.filter(({ kind }) => kind !== 'passed').length,
    hold: last?.kind ?? 'open',
    passedBy: passed ? last.name : null,
    ownWork: passed && last.ownWork,
    values: read?.values ?? {},
    failures: inspections.filter(({ kind }) => kind === 'failed').length,
    why: passed ? null : (last?.why ?? null),
  };
}

type Told = Pick<
  TaskState,
  'status' | 'startedAt' | 'finishedAt' | 'why' | 'part' | 'shares' | 'disputed'
>;

function toldStanding(tells: readonly TaskTell[], task: Task, plan: Plan | null): Told {
  const { named, count } = expectedCrews(plan, task);
  const tellers = new Set(tells.flatMap(({ crew }) => (crew ? [crew] : [])));
  // Where one crew is enough, the crew that took the task stands for the one that was to.
  const awaited = count === 1 && tellers.size > 0 ? [] : named;
  const crews = tells.length > 0 ? [...new Set([...awaited, ...tellers])] : [];
  // Nobody named and nobody told: a keep-off start that was granted still puts the task to work.
  const standings = (crews.length > 0 ? crews : ['']).map((crew) =>
    shareOf(crew, tells, count > 1),
  );
  const whole = sum(standings, count);
  const shares = standings.map(({ share }) => share).filter(({ crew }) => crew !== '');
  const says = (status: TaskStatus) => shares.some((share) => share.status === status);
  // Two crews about a task that one does alone contradict each other as two voices of one crew do.
  const contradicted = count === 1 && says('done') && says('stopped');
  const disputed = contradicted || standings.some((standing) => standing.disputed);
  return { ...whole, shares, disputed };
}

function sum(
  standings: readonly ShareStanding[],
  count: number,
): Omit<Told, 'shares' | 'disputed'> {
  const shares = standings.map(({ share }) => share);
  const done = shares.every(({ status }) => status === 'done') && shares.length >= count;
  const status = done ? 'done' : unfinished(shares.map((share) => share.status));
  const parts = shares.reduce((total, { part }) => total + part, 0);
  return {
    status,
    startedAt: earliest(shares.map(({ startedAt }) => startedAt)),
    finishedAt: done ? latest(shares.map(({ finishedAt }) => finishedAt)) : null,
    why: shares.find((share) => share.status === 'stopped')?.why ?? null,
    part: done ? 1 : parts / Math.max(shares.length, count),
  };
}

/** One crew that stopped holds up a joint task; one that began, or is done before the others, puts it to work. */
function unfinished(statuses: readonly TaskStatus[]): TaskStatus {
  if (statuses.includes('stopped')) return 'stopped';
  if (statuses.includes('at-work') || statuses.includes('done')) return 'at-work';
  return 'to-come';
}

function earliest(times: readonly (string | null)[]): string | null {
  return byTime(times)[0] ?? null;
}

function latest(times: readonly (string | null)[]): string | null {
  return byTime(times).at(-1) ?? null;
}

function byTime(times: readonly (string | null)[]): string[] {
  const known = times.filter((time) => time !== null);
  return known.toSorted((a, b) => Date.parse(a) - Date.parse(b));
}
