import { minutesAfter } from '../instants.ts';
import { waterStanding, windStanding } from '../readings.ts';
import type { BuildState, LoadTell } from '../state.ts';
import { loadStanding } from '../stores.ts';
import type { KnownEntry } from '../upcast.ts';
import { lapseHolds } from './consequences.ts';
import { addEvent } from './events.ts';

type Of<Kind extends KnownEntry['kind']> = Extract<KnownEntry, { kind: Kind }>;

/** Stores in. */
export function foldLoadIn(state: BuildState, entry: Of<'load-came'>): BuildState {
  const at = entry.happenedAt;
  return tellOfLoad(state, entry.body.load, {
    entry: entry.number,
    kind: 'in',
    at,
    toldAt: at,
    why: null,
  });
}

/** Stores late, by so many minutes against the order of work. A plan made before is stale. */
export function foldLoadLate(state: BuildState, entry: Of<'load-late'>): BuildState {
  const { load, minutes, why } = entry.body;
  const planned = state.loads[load]?.planned.at;
  if (!planned) return state;
  const at = minutesAfter(planned, minutes);
  const toldAt = entry.happenedAt;
  const told = tellOfLoad(state, load, { entry: entry.number, kind: 'late', at, toldAt, why });
  return { ...told, workNumber: entry.number };
}

function tellOfLoad(state: BuildState, load: string, tell: LoadTell): BuildState {
  const before = state.loads[load];
  if (!before) return state;
  const after = loadStanding({ ...before, tells: [...before.tells, tell] });
  return { ...state, loads: { ...state.loads, [load]: after } };
}

/** Parts short. */
export function foldShort(state: BuildState, entry: Of<'part-short'>): BuildState {
  const { part, count, task } = entry.body;
  const sentence = `${count} short: ${part}.`;
  return addEvent(state, entry, { kind: 'short', sentence, ...(task ? { task } : {}) });
}

export function foldNearMiss(state: BuildState, entry: Of<'near-miss-told'>): BuildState {
  return addEvent(state, entry, { kind: 'near-miss', sentence: `Near miss: ${entry.body.what}.` });
}

export function foldWater(state: BuildState, entry: Of<'water-told'>): BuildState {
  const { rise, level } = entry.body;
  const told = { entry: entry.number, at: entry.happenedAt, rise, level };
  return { ...state, water: waterStanding([...state.water.tells, told]) };
}

/** Wind, with the holds that lapse by it. */
export function foldWind(state: BuildState, entry: Of<'wind-told'>): BuildState {
  const { speed } = entry.body;
  const told = { entry: entry.number, at: entry.happenedAt, speed };
  const read = { ...state, wind: windStanding([...state.wind.tells, told]) };
  return lapseHolds(read, entry, `wind of ${speed} m/s`);
}
