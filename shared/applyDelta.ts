import type { BuildState, TaskState } from '#domain/progress/state.ts';
import type { DeltaFrame } from './wire.ts';

type ListChange = { readonly drop: number; readonly add: unknown[] };

/**
 * What one entry changed. Parts are compared by reference: `evolve` shares whatever it does not change, so the
 * comparison costs next to nothing. `kind` is the kind of the entry that led from `before` to `after`.
 */
export function diffState(before: BuildState, after: BuildState, kind: string): DeltaFrame {
  const changed: Record<string, unknown> = {};
  const lists: Record<string, ListChange> = {};
  for (const [part, value] of Object.entries(after)) {
    const old: unknown = before[part as keyof BuildState];
    if (part === 'tasks' || value === old) continue;
    const ends = Array.isArray(value) && Array.isArray(old) ? changeOfEnds(old, value) : null;
    if (ends) lists[part] = ends;
    else changed[part] = value;
  }
  const tasks = Object.fromEntries(
    Object.entries(after.tasks).filter(([task, state]) => state !== before.tasks[task]),
  );
  const gone = Object.keys(before.tasks).filter((task) => !Object.hasOwn(after.tasks, task));
  const some = Object.keys(lists).length > 0 ? { lists } : {};
  return { number: after.number, fold: after.fold, changed, tasks, ...some, gone, kind };
}

/** A list that lost items at its front and gained some at its end; null when more than that changed. */
function changeOfEnds(before: readonly unknown[], after: readonly unknown[]): ListChange | null {
  const found = before.indexOf(after[0]);
  const drop = found < 0 ? before.length : found;
  const kept = before.length - drop;
  if (kept === 0 || kept > after.length) return null;
  for (let place = 0; place < kept; place += 1) {
    if (before[drop + place] !== after[place]) return null;
  }
  return { drop, add: after.slice(kept) };
}

/**
 * The state after a delta. A delta that the state already holds changes nothing, so that replay may overlap.
 * The caller sees to it that none is left out: numbers have no gaps.
 */
export function applyDelta(state: BuildState, delta: DeltaFrame): BuildState {
  if (delta.number <= state.number) return state;
  return {
    ...state,
    ...delta.changed,
    ...listsAfter(state, delta.lists ?? {}),
    tasks: tasksAfter(state.tasks, delta),
  };
}

function listsAfter(
  state: BuildState,
  lists: Readonly<Record<string, ListChange>>,
): Partial<BuildState> {
  return Object.fromEntries(
    Object.entries(lists).map(([part, { drop, add }]) => {
      const held = state[part as keyof BuildState];
      return [part, [...(Array.isArray(held) ? held.slice(drop) : []), ...add]];
    }),
  );
}

function tasksAfter(tasks: BuildState['tasks'], delta: DeltaFrame): BuildState['tasks'] {
  if (delta.gone.length === 0 && Object.keys(delta.tasks).length === 0) return tasks;
  const gone = new Set(delta.gone);
  const kept: Record<string, TaskState> = {};
  for (const [task, state] of Object.entries(tasks)) if (!gone.has(task)) kept[task] = state;
  return { ...kept, ...delta.tasks };
}
