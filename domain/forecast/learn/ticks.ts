import { minutesBetween } from '../../progress/instants.ts';
import { crewStanding } from '../../progress/people.ts';
import type { BuildState, TaskState } from '../../progress/state.ts';

/** How long a crew was at a task, as it was told. Minutes after the start of the build. */
export type Tick = {
  readonly task: string;
  readonly crews: readonly string[];
  readonly start: number;
  /** Null while it is at work. */
  readonly finish: number | null;
  /** Spells between start and finish in which nobody was at it: stopped, or under a halt. */
  readonly stops: readonly { readonly from: number; readonly to: number }[];
  /** How many of a crew were fit when it began, where that is not as many as now: fewer people are no slower pace. */
  readonly fit?: Readonly<Record<string, number>>;
};

/**
 * What the tells of a build say of minutes at work: tasks whose start was told, done or at work in the present
 * attempt. Not those whose start nobody told, nor holds (an inspection tells nothing of a crew's pace), nor those of
 * which a part was told in place of the clock. Sorted by task, so that the order of arrival does not matter.
 */
export function ticksOf(state: BuildState, now: string): Tick[] {
  const minutes = (time: string) => minutesBetween(state.start, time);
  const ticks = state.work.tasks.flatMap((task): Tick[] => {
    const standing = state.tasks[task.id];
    if (!standing || task.hold || standing.disputed) return [];
    const { status, startedAt, finishedAt, shares } = standing;
    if ((status !== 'done' && status !== 'at-work') || startedAt === null) return [];
    if (status === 'at-work' && standing.part > 0) return [];
    const finish = status === 'done' && finishedAt !== null ? minutes(finishedAt) : null;
    const stops = stopsOf(standing).map(({ from, to }) => ({
      from: minutes(from),
      to: minutes(to ?? now),
    }));
    const crews = shares.map(({ crew }) => crew);
    const fit = finish === null ? null : fitThen(state, crews, startedAt);
    return [
      { task: task.id, crews, start: minutes(startedAt), finish, stops, ...(fit && { fit }) },
    ];
  });
  return ticks.sort((one, other) => (one.task < other.task ? -1 : 1));
}

/** How many of these crews were fit at a time, of those that have another strength now; null where none has. */
function fitThen(
  state: BuildState,
  crews: readonly string[],
  time: string,
): Record<string, number> | null {
  const other = crews.flatMap((id): [string, number][] => {
    const crew = state.crews[id];
    if (!crew || crew.tells.length === 0) return [];
    const told = crew.tells.filter(({ at }) => Date.parse(at) <= Date.parse(time));
    const { fit } = crewStanding({ ...crew, tells: told });
    return fit === crew.fit ? [] : [[id, fit]];
  });
  return other.length === 0 ? null : Object.fromEntries(other);
}

/** When the first crew stopped until one resumed; a joint task stands while any of its crews does. */
function stopsOf({ tells }: TaskState): { from: string; to: string | null }[] {
  const stops: { from: string; to: string | null }[] = [];
  const inTime = tells.toSorted(
    (one, other) => Date.parse(one.at) - Date.parse(other.at) || one.entry - other.entry,
  );
  for (const { kind, at } of inTime) {
    const open = stops.at(-1);
    const stopped = open !== undefined && open.to === null;
    if ((kind === 'stopped' || kind === 'halted') && !stopped) stops.push({ from: at, to: null });
    else if (kind !== 'stopped' && kind !== 'halted' && stopped) {
      stops[stops.length - 1] = { from: open.from, to: at };
    }
  }
  return stops;
}
