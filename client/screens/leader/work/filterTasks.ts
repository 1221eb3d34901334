import { isAtWork } from '#domain/progress/standing.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { readiness } from '#domain/progress/views/readiness.ts';
import { crewLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { words } from '../../../words/words.ts';

export type Filter = keyof typeof words.work.filters;

/** The tasks that fit a filter and every typed word (in number, name, phase or a crew's name), in the order of work. */
export function filterTasks(
  state: BuildState,
  filter: Filter,
  find: string,
  now: string,
): readonly Task[] {
  const typed = find.toLowerCase().split(/\s+/).filter(Boolean);
  return state.work.tasks.filter(
    (task) => fits(state, task, filter, now) && typed.every((word) => mentions(state, task, word)),
  );
}

function fits(state: BuildState, task: Task, filter: Filter, now: string): boolean {
  const standing = state.tasks[task.id];
  switch (filter) {
    case 'all':
      return true;
    case 'open':
      return standing?.status !== 'done';
    case 'now':
      return standing !== undefined && (isAtWork(standing) || standing.status === 'stopped');
    case 'ready':
      return readiness(state, task.id, now).ready;
    case 'holds':
      return task.hold !== undefined;
    case 'keepOff':
      return task.keepOff;
  }
}

function mentions(state: BuildState, task: Task, word: string): boolean {
  // A number means that number, not every number that holds its digits.
  if (/^\d+$/.test(word)) return String(task.number) === word || inName(task.name, word);
  const crews = task.needs.flatMap(({ anyOf }) => anyOf.map((crew) => crewLabel(state, crew)));
  return [task.name, task.phase, task.id, ...crews].some((text) =>
    text.toLowerCase().includes(word),
  );
}

function inName(name: string, number: string): boolean {
  return name.split(/\D+/).includes(number);
}
