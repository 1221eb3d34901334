import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

/** The task that a typed text names: its number, alone or before its name, its whole name, or its id; null when none. */
export function findTask({ tasks }: Work, typed: string): Task | null {
  const text = typed.trim().toLowerCase();
  if (text === '') return null;
  const named = tasks.find(
    ({ id, number, name }) =>
      text === `${number} ${name.toLowerCase()}` ||
      text === name.toLowerCase() ||
      text === id.toLowerCase(),
  );
  if (named) return named;
  return /^\d+$/.test(text) ? (tasks.find(({ number }) => String(number) === text) ?? null) : null;
}
