import { expectedMinutes } from '../../tasks/expected.ts';
import type { Task } from '../../tasks/task.ts';
import type { BuildState } from '../state.ts';

/** Work done and work in all, in person-minutes; `share` is 0 to 1. */
export type PercentComplete = {
  readonly done: number;
  readonly total: number;
  readonly share: number;
};

/**
 * How much of the work is done: expected minutes (PERT) times usual people, done tasks whole and others by the part
 * that was told. Where the order of work names no people at all, each task counts as one person's.
 */
export function percentComplete({ work, tasks }: BuildState): PercentComplete {
  const someone = work.tasks.some((task) => peopleOf(task) > 0);
  let done = 0;
  let total = 0;
  for (const task of work.tasks) {
    const weight = expectedMinutes(task.minutes, 'pert') * (someone ? peopleOf(task) : 1);
    const standing = tasks[task.id];
    total += weight;
    done += weight * (standing?.status === 'done' ? 1 : (standing?.part ?? 0));
  }
  return { done, total, share: total > 0 ? done / total : 0 };
}

function peopleOf({ needs }: Task): number {
  return needs.reduce((sum, { people }) => sum + people.usual, 0);
}
