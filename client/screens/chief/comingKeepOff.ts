import { expectedCrews, peopleFrom } from '#domain/progress/plannedCrews.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import type { Task } from '#domain/tasks/task.ts';
import { iso } from '../../words/units.ts';

/** With more than so much open before it, a keep-off task is not near enough to clear people for. */
const nearEnough = 3;

/**
 * The next keep-off task for which this crew must tell its people off, once little else stands before it; null when
 * none is near. `own` are the people of the crew that take part.
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
  if (!next) return null;
  const conditions = keepOffCheck(state, next.id, iso(now));
  const concerned = conditions.some(({ kind, of }) => kind === 'off' && of === crew);
  const open = conditions.filter(
    ({ kind, met }) => !met && (kind === 'order' || kind === 'hold'),
  ).length;
  if (!concerned || open > nearEnough) return null;
  const takesPart = expectedCrews(state.plan, next).named.includes(crew);
  return { task: next, own: takesPart ? peopleFrom(state.plan, next, crew) : 0 };
}
