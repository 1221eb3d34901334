import type { Work } from '../tasks/work.ts';

/**
 * Ids of the tasks of which the last to finish is the opening: the one that opens; where none does, the holds; where
 * there are none, all tasks.
 */
export function openingTasks(work: Work): Set<string> {
  const opens = work.tasks.filter((task) => task.opens);
  const holds = work.tasks.filter((task) => task.hold !== undefined);
  const group = opens.length > 0 ? opens : holds.length > 0 ? holds : work.tasks;
  return new Set(group.map(({ id }) => id));
}
