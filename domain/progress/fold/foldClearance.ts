import { orderIndex } from '../orderIndex.ts';
import type { BuildState, Clearance } from '../state.ts';
import type { KnownEntry } from '../upcast.ts';

type Of<Kind extends KnownEntry['kind']> = Extract<KnownEntry, { kind: Kind }>;

const nothingClear: Clearance = { off: {}, clear: {} };

/** "Off, 7 of 7". */
export function foldOff(state: BuildState, entry: Of<'off-told'>): BuildState {
  const { task, crew, off, of } = entry.body;
  const counts = state.crews[crew]?.tells ?? [];
  if (isOvertaken(state, task, entry.happenedAt, counts)) return state;
  const before = state.clearances[task] ?? nothingClear;
  const told = { off, of, at: entry.happenedAt, entry: entry.number };
  const clearance = { ...before, off: { ...before.off, [crew]: told } };
  return { ...state, clearances: { ...state.clearances, [task]: clearance } };
}

/** Seen clear from one bank. */
export function foldClear(state: BuildState, entry: Of<'clear-told'>): BuildState {
  const { task, bank, name, people } = entry.body;
  if (isOvertaken(state, task, entry.happenedAt, [])) return state;
  const before = state.clearances[task] ?? nothingClear;
  const told = { name, people, at: entry.happenedAt, entry: entry.number };
  const clearance = { ...before, clear: { ...before.clear, [bank]: told } };
  return { ...state, clearances: { ...state.clearances, [task]: clearance } };
}

/**
 * Whether something has happened since that makes a count or a look worthless: a halt, work that began or went on in
 * the zones, another strength. A phone that comes back late must not clear what it has not seen.
 */
function isOvertaken(
  state: BuildState,
  id: string,
  happenedAt: string,
  counts: readonly { readonly at: string }[],
): boolean {
  const zones = orderIndex(state.work).task.get(id)?.zones ?? [];
  const begun = state.work.tasks
    .filter((task) => task.id === id || task.zones.some((zone) => zones.includes(zone)))
    .flatMap((task) => state.tasks[task.id]?.tells ?? [])
    .filter(({ kind }) => kind === 'started' || kind === 'resumed');
  const halts = state.events.filter(({ kind }) => kind === 'halt');
  const then = Date.parse(happenedAt);
  return [...begun, ...halts, ...counts].some(({ at }) => Date.parse(at) > then);
}
