import type { BuildState, Inspection } from '../state.ts';
import type { KnownEntry } from '../upcast.ts';
import { changeTask } from './changeTask.ts';

/** Brings the tasks back that the entry names: finished work as a new attempt, a passed hold as lapsed. */
export function bringBack(state: BuildState, entry: KnownEntry, why: string): BuildState {
  const redo = entry.consequence?.redo ?? [];
  if (redo.length === 0) return state;
  const back = redo.reduce(
    (sofar, { task: id }) =>
      changeTask(sofar, id, (task) => {
        if (task.hold !== 'none')
          return { ...task, inspections: [...task.inspections, lapse(entry, why)] };
        const { attempt, startedAt, finishedAt, tells } = task;
        const closedAt = entry.happenedAt;
        const closed = { entry: entry.number, attempt, startedAt, finishedAt, closedAt, tells };
        return { ...task, earlier: [...task.earlier, closed], tells: [] };
      }),
    state,
  );
  return { ...back, workNumber: entry.number };
}

/** Makes the passes worthless that the entry names. */
export function lapseHolds(state: BuildState, entry: KnownEntry, why: string): BuildState {
  return (entry.consequence?.lapsed ?? []).reduce(
    (sofar, id) =>
      changeTask(sofar, id, (task) => ({
        ...task,
        inspections: [...task.inspections, lapse(entry, why)],
      })),
    state,
  );
}

/** Flags the tasks that the entry names as started on the strength of `causes`. */
export function flagTasks(
  state: BuildState,
  entry: KnownEntry,
  causes: readonly string[],
): BuildState {
  return (entry.consequence?.flagged ?? []).reduce(
    (sofar, id) =>
      changeTask(sofar, id, (task) => ({
        ...task,
        flaggedFor: [...new Set([...task.flaggedFor, ...causes])],
      })),
    state,
  );
}

function lapse(entry: KnownEntry, why: string): Inspection {
  const { number, happenedAt } = entry;
  return {
    entry: number,
    kind: 'lapsed',
    at: happenedAt,
    name: '',
    values: {},
    why,
    ownWork: false,
  };
}
