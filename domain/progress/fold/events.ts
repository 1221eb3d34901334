import type { BuildState, Event } from '../state.ts';
import type { KnownEntry } from '../upcast.ts';

/** Adds a thing worth saying in a report. */
export function addEvent(
  state: BuildState,
  entry: KnownEntry,
  event: Omit<Event, 'entry' | 'at'>,
): BuildState {
  const added: Event = { entry: entry.number, at: entry.happenedAt, ...event };
  return { ...state, events: [...state.events, added] };
}

/** Puts the rules that a told fact broke into sight of leader and chief. */
export function addBreaches(state: BuildState, entry: KnownEntry): BuildState {
  const { task, crew } = entry.body as { task?: string; crew?: string };
  return (entry.breaches ?? []).reduce(
    (sofar, breach) =>
      addEvent(sofar, entry, {
        kind: 'breach',
        sentence: breach.sentence,
        ...(task ? { task } : {}),
        ...(crew ? { crew } : {}),
        breach,
      }),
    state,
  );
}
