import { expectedCrews, peopleFrom } from '#domain/progress/plannedCrews.ts';
import { isAtWork } from '#domain/progress/standing.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { courseNow } from '#domain/progress/views/courseNow.ts';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import type { Task } from '#domain/tasks/task.ts';
import { iso, minuteOf } from '../../words/units.ts';

/** A keep-off task is near when by plan it starts within so many minutes: time to get people off, none to waste. */
const nearMinutes = 10;

/**
 * The next keep-off task for which this crew must tell its people off, once it is near by plan or nothing in the order
 * stands before it any more; null when none is. `own` are the people of the crew that take part.
 */
export function comingKeepOff(
  state: BuildState,
  crew: string,
  now: number,
): { readonly task: Task; readonly own: number } | null {
  const order = state.plan?.tasks.map(({ task }) => task) ?? state.work.tasks.map(({ id }) => id);
  const next = order
    .map((id) => state.work.tasks.find((task) => task.id === id))
    .find((task) => task?.keepOff && state.tasks[task.id]?.status === 'to-come');
  // While another one closes the same ground, "off" for the next says nothing of what will be then.
  if (!next || runningKeepOffs(state).some((task) => sharesZone(task, next))) return null;
  const conditions = keepOffCheck(state, next.id, iso(now));
  if (!conditions.some(({ kind, of }) => kind === 'off' && of === crew)) return null;
  const inOrder = conditions.every(({ kind, met }) => met || (kind !== 'order' && kind !== 'hold'));
  if (!inOrder && !isNear(state, next.id, now)) return null;
  const takesPart = expectedCrews(state.plan, next).named.includes(crew);
  return { task: next, own: takesPart ? peopleFrom(state.plan, next, crew) : 0 };
}

/** The keep-off tasks that run now: their zones are closed to all but their own people. */
export function runningKeepOffs(state: BuildState): readonly Task[] {
  return state.work.tasks.filter(({ id, keepOff }) => {
    const standing = state.tasks[id];
    return keepOff && standing !== undefined && isAtWork(standing);
  });
}

function sharesZone(one: Task, other: Task): boolean {
  return one.zones.some((zone) => other.zones.includes(zone));
}

/** The crew that asks for a keep-off task to start: the one that gives most people to it. */
export function crewThatAsks(state: BuildState, task: Task): string | undefined {
  const { named } = expectedCrews(state.plan, task);
  const give = (crew: string): number => peopleFrom(state.plan, task, crew);
  return named.toSorted((a, b) => give(b) - give(a))[0];
}

function isNear(state: BuildState, task: string, now: number): boolean {
  const run = courseNow(state, iso(now))?.runs.get(task);
  return run !== undefined && run.start - minuteOf(state.start, now) <= nearMinutes;
}
