import type { Task } from '../../tasks/task.ts';
import { orderIndex } from '../orderIndex.ts';
import { isAtWork, standingOf } from '../standing.ts';
import type { BuildState, TaskState } from '../state.ts';

/**
 * Changes what is known of one task, derives its state anew and draws what follows from it: once somebody newly works
 * in a zone, what was told clear there is void; once it is done, what was flagged for its sake no longer is.
 * A task that is not in the order of work is left alone.
 */
export function changeTask(
  state: BuildState,
  id: string,
  change: (task: TaskState) => TaskState,
): BuildState {
  const before = state.tasks[id];
  const task = orderIndex(state.work).task.get(id);
  if (!before || !task) return state;
  const after = standingOf(change(before), task, state.plan);
  const changed = { ...state, tasks: { ...state.tasks, [id]: after } };
  const cleared = someoneBegan(before, after) ? voidClearances(changed, task) : changed;
  return before.status !== 'done' && after.status === 'done' ? unflag(cleared, id) : cleared;
}

function someoneBegan(before: TaskState, after: TaskState): boolean {
  if (!isAtWork(after)) return false;
  if (!isAtWork(before)) return true;
  return after.shares.some(
    ({ crew, status }) =>
      status === 'at-work' &&
      before.shares.find((share) => share.crew === crew)?.status !== 'at-work',
  );
}

/** Head counts and "seen clear" for every keep-off task that shares a zone with `task` no longer hold. */
export function voidClearances(state: BuildState, task: Task): BuildState {
  const index = orderIndex(state.work);
  const kept = Object.entries(state.clearances).filter(([keepOff]) => {
    const zones = index.task.get(keepOff)?.zones ?? [];
    return keepOff !== task.id && !zones.some((zone) => task.zones.includes(zone));
  });
  if (kept.length === Object.keys(state.clearances).length) return state;
  return { ...state, clearances: Object.fromEntries(kept) };
}

function unflag(state: BuildState, done: string): BuildState {
  const flagged = Object.entries(state.tasks).filter(([, task]) => task.flaggedFor.includes(done));
  if (flagged.length === 0) return state;
  const tasks = { ...state.tasks };
  for (const [id, task] of flagged) {
    const flaggedFor = task.flaggedFor.filter((cause) => cause !== done);
    tasks[id] = { ...task, flaggedFor, flagged: flaggedFor.length > 0 };
  }
  return { ...state, tasks };
}
