import type { BuildState, TaskState } from '#domain/progress/state.ts';
import type { DeltaFrame } from './wire.ts';

/**
 * What one entry changed. Parts are compared by reference: `evolve` shares whatever it does not change, so the
 * comparison costs next to nothing. `kind` is the kind of the entry that led from `before` to `after`.
 */
export function diffState(before: BuildState, after: BuildState, kind: string): DeltaFrame {
  const changed = Object.fromEntries(
    Object.entries(after).filter(
      ([part, value]) => part !== 'tasks' && value !== before[part as keyof BuildState],
    ),
  );
  const tasks = Object.fromEntries(
    Object.entries(after.tasks).filter(([task, state]) => state !== before.tasks[task]),
  );
  const gone = Object.keys(before.tasks).filter((task) => !Object.hasOwn(after.tasks, task));
  return { number: after.number, fold: after.fold, changed, tasks, gone, kind };
}

/**
 * The state after a delta. A delta that the state already holds changes nothing, so that replay may overlap.
 * The caller sees to it that none is left out: numbers have no gaps.
 */
export function applyDelta(state: BuildState, delta: DeltaFrame): BuildState {
  if (delta.number <= state.number) return state;
  return { ...state, ...delta.changed, tasks: tasksAfter(state.tasks, delta) };
}

function tasksAfter(tasks: BuildState['tasks'], delta: DeltaFrame): BuildState['tasks'] {
  if (delta.gone.length === 0 && Object.keys(delta.tasks).length === 0) return tasks;
  const gone = new Set(delta.gone);
  const kept: Record<string, TaskState> = {};
  for (const [task, state] of Object.entries(tasks)) if (!gone.has(task)) kept[task] = state;
  return { ...kept, ...delta.tasks };
}
