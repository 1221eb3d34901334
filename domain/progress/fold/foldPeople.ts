import type { CrewState, CrewTell } from '../crewState.ts';
import { crewStanding, freshCrew } from '../people.ts';
import type { BuildState } from '../state.ts';
import type { KnownEntry } from '../upcast.ts';
import { crewLabel } from '../words.ts';
import { lapseHolds } from './consequences.ts';
import { addEvent } from './events.ts';

type Of<Kind extends KnownEntry['kind']> = Extract<KnownEntry, { kind: Kind }>;

/** How many of a crew are fit. */
export function foldStrength(state: BuildState, entry: Of<'strength-told'>): BuildState {
  const { crew, fit } = entry.body;
  return tellOfCrew(state, entry, crew, { kind: 'strength', fit });
}

/** A person hurt; out of work lowers the strength by one. */
export function foldHurt(state: BuildState, entry: Of<'person-hurt'>): BuildState {
  const { crew, what, outOfWork } = entry.body;
  const told = tellOfCrew(state, entry, crew, { kind: 'hurt', outOfWork });
  const sentence = `${crewLabel(state, crew)}: one hurt${outOfWork ? ' and out of work' : ''}, ${what}.`;
  return addEvent(told, entry, { kind: 'hurt', sentence, crew });
}

/** Other people take over from a crew: its head counts no longer hold. */
export function foldRelief(state: BuildState, entry: Of<'crew-relieved'>): BuildState {
  const { crew } = entry.body;
  const told = tellOfCrew(state, entry, crew, { kind: 'relief' });
  const lapsed = lapseHolds(told, entry, `${crewLabel(state, crew)} was relieved`);
  return voidHeadCounts(lapsed, crew);
}

function tellOfCrew(
  state: BuildState,
  entry: KnownEntry,
  crew: string,
  tell: Omit<CrewTell, 'entry' | 'at'>,
): BuildState {
  const before = state.crews[crew] ?? freshCrew(0, 0);
  const told: CrewTell = { entry: entry.number, at: entry.happenedAt, ...tell };
  return changeCrew(state, entry, crew, { ...before, tells: [...before.tells, told] });
}

/** Puts a crew's tells in place of the ones before, with what follows when its strength changes by it. */
export function changeCrew(
  state: BuildState,
  entry: KnownEntry,
  crew: string,
  changed: CrewState,
): BuildState {
  const after = crewStanding(changed);
  const next = { ...state, crews: { ...state.crews, [crew]: after } };
  if (state.crews[crew]?.fit === after.fit) return next;
  return voidHeadCounts({ ...next, workNumber: entry.number }, crew);
}

/** The head counts that a crew told for keep-off tasks to come are void. */
function voidHeadCounts(state: BuildState, crew: string): BuildState {
  const told = Object.values(state.clearances).some(({ off }) => Object.hasOwn(off, crew));
  if (!told) return state;
  const clearances = Object.fromEntries(
    Object.entries(state.clearances).map(([task, clearance]) => {
      if (!Object.hasOwn(clearance.off, crew)) return [task, clearance];
      const { [crew]: _void, ...off } = clearance.off;
      return [task, { ...clearance, off }];
    }),
  );
  return { ...state, clearances };
}
