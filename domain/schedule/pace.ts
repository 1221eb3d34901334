import type { LightClock } from '../forecast/light/lightClock.ts';
import { lightMinutes } from '../forecast/light/lightClock.ts';
import type { Task } from '../tasks/task.ts';
import type { Crew, Work } from '../tasks/work.ts';

/** So much of a second is rounding, not time. */
const dust = 1e-6;

/**
 * How the work of one task goes on over time, in seconds after the start of the build: a clock that goes slower in the
 * dark and stands still in rests, and when the task may not start.
 *
 * The rule. Work pauses over the rests of its crews, with people, room and equipment held, and goes on after: it
 * finishes later by the rest. A task that cannot be left half done (a keep-off task, or one that a hold point follows
 * at once) and one that wants daylight do not pause or run into the dark: they start only when they are done before
 * it. Nothing starts in a rest of its crews. So a later start never finishes earlier, nor does longer work.
 */
export type Pace = {
  readonly clock: LightClock;
  /** Spells, as from, to, from, to ...: no start falls into one. */
  readonly pauses: Float64Array;
  /** Spells that the task must not touch from start to finish. */
  readonly shut: Float64Array;
};

/** Whole second at which work of so many seconds (by day, without rests) that begins at `start` is done. */
export function finishAt({ clock }: Pace, start: number, seconds: number): number {
  const { at, shows, rate } = clock;
  if (seconds === 0 || at.length === 0 || start + seconds <= at[0]!) {
    return start + seconds;
  }
  const shown = lightMinutes(clock, start) + seconds;
  let k = at.length - 1;
  while (k >= 0 && shown <= shows[k]! + dust) k -= 1;
  const finish = k < 0 ? start + seconds : at[k]! + (shown - shows[k]!) / rate[k]!;
  return Math.max(start, Math.ceil(finish - dust));
}

/** The earliest start, no earlier than `start`, at which the task may begin. */
export function startAt(pace: Pace, start: number, seconds: number): number {
  const { pauses, shut } = pace;
  let begin = start;
  for (;;) {
    const before = begin;
    for (let at = 0; at < pauses.length; at += 2) {
      if (pauses[at]! <= begin && begin < pauses[at + 1]!) {
        begin = pauses[at + 1]!;
      }
    }
    for (let at = 0; at < shut.length; at += 2) {
      if (begin < shut[at + 1]! && finishAt(pace, begin, seconds) > shut[at]!) {
        begin = shut[at + 1]!;
      }
    }
    if (begin === before) {
      return begin;
    }
  }
}

/** The latest start with which the task is done by `finish`, and which it may have. */
export function beginBy(pace: Pace, finish: number, seconds: number): number {
  const { clock, shut } = pace;
  const { at, shows, rate } = clock;
  let due = finish;
  for (;;) {
    const shown = lightMinutes(clock, due) - seconds;
    let k = at.length - 1;
    while (k >= 0 && shown < shows[k]! - dust) k -= 1;
    let begin = Math.floor((k < 0 ? shown : at[k]! + (shown - shows[k]!) / rate[k]!) + dust);
    while (finishAt(pace, begin, seconds) > due) begin -= 1;
    const done = finishAt(pace, begin, seconds);
    let touched = Number.POSITIVE_INFINITY;
    for (let spell = 0; spell < shut.length; spell += 2) {
      if (begin < shut[spell + 1]! && done > shut[spell]!) {
        touched = Math.min(touched, shut[spell]!);
      }
    }
    if (touched === Number.POSITIVE_INFINITY) {
      return begin;
    }
    due = touched;
  }
}

type Spell = { readonly from: number; readonly to: number };

/** Says of any task of the work, manned by these crews, at what pace it goes; null where nothing slows or stops it. */
export type PaceOf = (task: Task, crews: readonly string[], started?: boolean) => Pace | null;

/**
 * The paces of an order of work. With `started` it is that of a task at work: what has begun is not left half done, so
 * a task that cannot pause runs on through a rest.
 */
export function pacesOf(work: Work): PaceOf {
  const dark = inSeconds(work.dark?.spells ?? []);
  const factor = Math.max(1, work.dark?.factor ?? 1);
  const rests = new Map(work.crews.map((crew) => [crew.id, inSeconds(wholeRests(crew))]));
  const resting = new Set([...rests].filter(([, own]) => own.length > 0).map(([id]) => id));
  const holds = new Set(work.tasks.filter(({ hold }) => hold).map(({ id }) => id));
  const beforeHold = new Set(
    work.links
      .filter(({ to, counts, wait }) => holds.has(to) && counts === 'finish' && wait <= 0)
      .map(({ from }) => from),
  );
  const made = new Map<string, Pace | null>();
  return (task, crews, started = false) => {
    if (dark.length === 0 && resting.size === 0) {
      return null;
    }
    const tired = crews.filter((crew) => resting.has(crew)).sort();
    const whole = task.keepOff || beforeHold.has(task.id);
    const daylight = task.daylight === true;
    const key = `${tired.join()} ${whole} ${daylight} ${started}`;
    const known = made.get(key);
    if (known !== undefined) {
      return known;
    }
    const off = together(tired.flatMap((crew) => rests.get(crew)!));
    const shut = started ? [] : together([...(whole ? off : []), ...(daylight ? dark : [])]);
    const pauses = whole ? [] : off;
    const clock = clockOf(pauses, dark, daylight && !started ? 1 : factor);
    const none = clock.at.length + shut.length === 0;
    const pace = none ? null : { clock, pauses: flat(pauses), shut: flat(shut) };
    made.set(key, pace);
    return pace;
  };
}

/** The rests of the whole crew. Where only some of it rest, the crew is weaker meanwhile and its work goes on. */
function wholeRests({ rests = [] }: Crew) {
  return rests.filter(({ people }) => people === undefined);
}

function inSeconds(spells: readonly Spell[]): Spell[] {
  return together(
    spells.map(({ from, to }) => ({ from: Math.round(from * 60), to: Math.round(to * 60) })),
  );
}

/** Spells in order and apart, those that touch made one. */
function together(spells: readonly Spell[]): Spell[] {
  const apart: Spell[] = [];
  for (const { from, to } of spells.toSorted((one, other) => one.from - other.from)) {
    const last = apart.at(-1);
    if (last && from <= last.to) {
      apart[apart.length - 1] = { from: last.from, to: Math.max(last.to, to) };
    } else if (to > from) {
      apart.push({ from, to });
    }
  }
  return apart;
}

function flat(spells: readonly Spell[]): Float64Array {
  return Float64Array.from(spells.flatMap(({ from, to }) => [from, to]));
}

/** A clock that stands in the pauses and takes `factor` times as long in the dark. */
function clockOf(pauses: readonly Spell[], dark: readonly Spell[], factor: number): LightClock {
  const slow = factor > 1 ? dark : [];
  const turns = new Set([...pauses, ...slow].flatMap(({ from, to }) => [from, to]));
  const at = Float64Array.from(turns).sort();
  const within = (spells: readonly Spell[], time: number) =>
    spells.some(({ from, to }) => from <= time && time < to);
  const rate = at.map((time) => (within(pauses, time) ? 0 : within(slow, time) ? 1 / factor : 1));
  const shows = new Float64Array(at.length);
  for (let k = 0; k < at.length; k += 1) {
    shows[k] = k === 0 ? at[0]! : shows[k - 1]! + (at[k]! - at[k - 1]!) * rate[k - 1]!;
  }
  return { at, shows, rate };
}
