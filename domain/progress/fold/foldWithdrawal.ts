import { waterStanding, windStanding } from '../readings.ts';
import type { BuildState, TaskState } from '../state.ts';
import { loadStanding } from '../stores.ts';
import type { KnownEntry } from '../upcast.ts';
import { taskLabel } from '../words.ts';
import { changeTask } from './changeTask.ts';
import { flagTasks, lapseHolds } from './consequences.ts';
import { changeCrew } from './foldPeople.ts';

type Withdrawal = Extract<KnownEntry, { kind: 'tell-withdrawn' }>;

/** Takes one tell out of everything that was derived from it, and draws what follows. */
export function foldWithdrawal(state: BuildState, entry: Withdrawal): BuildState {
  const gone = entry.body.entry;
  const listed = {
    ...state,
    tells: state.tells.filter((tell) => tell.entry !== gone),
    withdrawn: [...state.withdrawn, gone],
  };
  const without = [withoutWork, withoutCrewTell, withoutLoadTell, withoutSiteTell].reduce(
    (sofar, remove) => remove(sofar, entry, gone),
    listed as BuildState,
  );
  const causes = tasksToldBy(state, gone);
  const flagged = flagTasks(without, entry, causes);
  const reason = `${causes.map((task) => taskLabel(state, task)).join(', ')} was told by mistake`;
  return lapseHolds(flagged, entry, reason);
}

/** The tasks that an entry told something of. */
export function tasksToldBy(state: BuildState, entry: number): string[] {
  return Object.entries(state.tasks)
    .filter(([, { tells, inspections }]) =>
      [...tells, ...inspections.filter(({ kind }) => kind !== 'lapsed')].some(
        (told) => told.entry === entry,
      ),
    )
    .map(([id]) => id);
}

function withoutWork(state: BuildState, entry: Withdrawal, gone: number): BuildState {
  let next = state;
  for (const [id, task] of Object.entries(state.tasks)) {
    const left = taskWithout(task, gone);
    if (left === task) continue;
    next = changeTask(next, id, () => left);
    if (left.earlier !== task.earlier) next = { ...next, workNumber: entry.number };
  }
  return next;
}

/** The task without one entry's tells, findings and lapses; an attempt that it closed is open again if nothing was told since. */
export function taskWithout(task: TaskState, gone: number): TaskState {
  const tells = without(task.tells, gone);
  const inspections = without(task.inspections, gone);
  const closed = task.earlier.at(-1);
  if (closed?.entry === gone && task.tells.length === 0)
    return { ...task, tells: closed.tells, inspections, earlier: task.earlier.slice(0, -1) };
  const earlier = task.earlier.some((attempt) => attempt.tells.some((t) => t.entry === gone))
    ? task.earlier.map((attempt) => ({ ...attempt, tells: without(attempt.tells, gone) }))
    : task.earlier;
  const same = tells === task.tells && inspections === task.inspections && earlier === task.earlier;
  return same ? task : { ...task, tells, inspections, earlier };
}

function withoutCrewTell(state: BuildState, entry: Withdrawal, gone: number): BuildState {
  let next = state;
  for (const [id, crew] of Object.entries(state.crews)) {
    const tells = without(crew.tells, gone);
    if (tells !== crew.tells) next = changeCrew(next, entry, id, { ...crew, tells });
  }
  return next;
}

function withoutLoadTell(state: BuildState, entry: Withdrawal, gone: number): BuildState {
  let next = state;
  for (const [id, load] of Object.entries(state.loads)) {
    const tells = without(load.tells, gone);
    if (tells === load.tells) continue;
    const loads = { ...next.loads, [id]: loadStanding({ ...load, tells }) };
    next = { ...next, loads, workNumber: entry.number };
  }
  return next;
}

/** Readings, clearances, acknowledgments and events. A breach stays in sight, marked: what was told was told. */
function withoutSiteTell(state: BuildState, _entry: Withdrawal, gone: number): BuildState {
  const water = without(state.water.tells, gone);
  const wind = without(state.wind.tells, gone);
  return {
    ...state,
    water: water === state.water.tells ? state.water : waterStanding(water),
    wind: wind === state.wind.tells ? state.wind : windStanding(wind),
    clearances: clearancesWithout(state.clearances, gone),
    halt: haltWithout(state.halt, gone),
    events: eventsWithout(state.events, gone),
  };
}

function clearancesWithout(all: BuildState['clearances'], gone: number): BuildState['clearances'] {
  const holds = (parts: object) =>
    Object.values(parts).some((told: { entry: number }) => told.entry === gone);
  if (!Object.values(all).some(({ off, clear }) => holds(off) || holds(clear))) return all;
  const rest = <Parts extends object>(parts: Parts): Parts =>
    Object.fromEntries(
      Object.entries(parts).filter(([, told]: [string, { entry: number }]) => told.entry !== gone),
    ) as Parts;
  return Object.fromEntries(
    Object.entries(all).map(([task, { off, clear }]) => [
      task,
      { off: rest(off), clear: rest(clear) },
    ]),
  );
}

function haltWithout(halt: BuildState['halt'], gone: number): BuildState['halt'] {
  if (!halt || !Object.values(halt.acknowledged).some(({ entry }) => entry === gone)) return halt;
  const acknowledged = Object.fromEntries(
    Object.entries(halt.acknowledged).filter(([, { entry }]) => entry !== gone),
  );
  return { ...halt, acknowledged };
}

function eventsWithout(events: BuildState['events'], gone: number): BuildState['events'] {
  if (!events.some(({ entry }) => entry === gone)) return events;
  return events
    .filter(({ entry, kind }) => entry !== gone || kind === 'breach')
    .map((event) => (event.entry === gone ? { ...event, withdrawn: true } : event));
}

function without<Told extends { readonly entry: number }>(told: Told[], gone: number): Told[] {
  return told.some(({ entry }) => entry === gone) ? told.filter((t) => t.entry !== gone) : told;
}
