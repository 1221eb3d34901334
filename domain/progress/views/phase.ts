import { isAtWork } from '../standing.ts';
import type { BuildState } from '../state.ts';
import { openedOf } from './opened.ts';

/**
 * The phase of the build in plain words: that of the foremost work going on, else of the first task not done; the
 * task's name where the order of work names no phases.
 */
export function phaseNow(state: BuildState): string {
  if (openedOf(state).open) return 'Open to traffic';
  const open = state.work.tasks.filter(({ id }) => state.tasks[id]?.status !== 'done');
  const going = open.findLast(({ id }) => {
    const standing = state.tasks[id];
    return standing !== undefined && isAtWork(standing);
  });
  const task = going ?? open[0];
  if (!task) return state.work.tasks.length > 0 ? 'All work done' : 'No order of work yet';
  return task.phase || task.name;
}
