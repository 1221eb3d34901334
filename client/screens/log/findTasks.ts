import { mayWorkAt } from '#domain/progress/plannedCrews.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';

/** Tasks that words may name; `sure` when it can only be the first. */
export type Named = { readonly tasks: readonly Task[]; readonly sure: boolean };

/**
 * Tasks that spoken words may name ("bay 10", "bay 10 left"), of one crew or of all: each word begins a word of the
 * task's name, numbers are whole. Names that begin with the words stand before names that have them elsewhere.
 */
export function tasksNamed(state: BuildState, said: readonly string[], crew?: string): Named {
  if (!said.some((word) => /^\p{L}{2}/u.test(word))) return { tasks: [], sure: false };
  const named = state.work.tasks.filter(
    (task) =>
      (crew === undefined || mayWorkAt(state, task, crew)) &&
      said.every((word) => wordsOf(task).some((one) => begins(one, word))),
  );
  const isInOrder = (task: Task): boolean =>
    said.every((word, place) => begins(wordsOf(task)[place] ?? '', word));
  const isOpen = ({ id }: Task): boolean => state.tasks[id]?.status !== 'done';
  const inOrder = named.filter(isInOrder);
  const best = inOrder.length > 0 ? inOrder : named;
  const others = named.filter((task) => !best.includes(task) && isOpen(task));
  // Work that is done already is hardly told again: another of that name may be meant.
  const sure = best.length === 1 && (best.every(isOpen) || others.length === 0);
  return { tasks: [...best, ...others], sure };
}

function wordsOf({ name }: Task): string[] {
  return name.toLowerCase().split(/[^\p{L}\p{N}.]+/u);
}

function begins(one: string, word: string): boolean {
  const typed = word.toLowerCase();
  return /^\d/.test(typed) ? one === typed : one.startsWith(typed);
}
