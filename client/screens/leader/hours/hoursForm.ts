import type { CrewHours } from '#domain/tasks/change.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { readSiteTime, writeSiteTime } from '../../../parts/siteTime.ts';
import { atMinute, minuteOf } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import type { Site } from '../crews/crewForm.ts';

/** A line as typed; `key` tells it from the others while lines come and go. Times as people at the site write them. */
export type TypedRest = { readonly key: number } & Record<'from' | 'to' | 'people', string>;
export type TypedLent = { readonly key: number } & Record<
  'crew' | 'from' | 'to' | 'people',
  string
>;
export type TypedStep = { readonly key: number } & Record<'from' | 'people', string>;

/** When how many of a crew are there, as typed. */
export type TypedHours = {
  readonly people: string;
  readonly from: string;
  readonly to: string;
  readonly rests: readonly TypedRest[];
  readonly lent: readonly TypedLent[];
  readonly strength: readonly TypedStep[];
};

export function typedHoursOf(crew: Crew, { start, zone }: Site): TypedHours {
  const time = (minute: number | undefined): string =>
    minute === undefined ? '' : writeSiteTime(atMinute(start, minute), zone, start);
  const count = (people: number | undefined): string => String(people ?? '');
  const { rests = [], lent = [], strength = [] } = crew;
  return {
    people: count(crew.people),
    from: time(crew.from),
    to: time(crew.to),
    rests: rests.map(({ from, to, people }, key) => {
      return { key, from: time(from), to: time(to), people: count(people) };
    }),
    lent: lent.map(({ crew: other, from, to, people }, key) => {
      return { key, crew: other, from: time(from), to: time(to), people: count(people) };
    }),
    strength: strength.map(({ from, people }, key) => {
      return { key, from: time(from), people: count(people) };
    }),
  };
}

/** A key that none of these lines has. */
export function freshKey(lines: readonly { readonly key: number }[]): number {
  return Math.max(-1, ...lines.map(({ key }) => key)) + 1;
}

/** Sentences by field: "people", "from", "to", and those of a line as "rests.2.from". */
export type HoursFaults = Readonly<Record<string, string>>;

/** What was typed, or what is wrong with it, by field. Lists come in order of time; `others` may be lent people. */
export function hoursIn(
  typed: TypedHours,
  { start, zone }: Site,
  others: readonly Pick<Crew, 'id'>[],
): { readonly hours: Omit<CrewHours, 'kind' | 'crew'> | null; readonly faults: HoursFaults } {
  const said = words.hours.faults;
  const faults: Record<string, string> = {};
  const minute = (field: string, text: string, wanted: boolean): number | null => {
    const at = text.trim() === '' ? null : readSiteTime(text, zone, start);
    const minutes = at === null ? null : minuteOf(start, at);
    if (minutes === null && (wanted || text.trim() !== '')) faults[field] = said.time;
    // A build may start some seconds into a minute: that minute is still not before it.
    if (minutes !== null && minutes <= -1) faults[field] = said.early;
    return minutes === null ? null : Math.max(0, minutes);
  };
  const count = (field: string, text: string, least: number, sentence: string): number => {
    const good = /^\d{1,3}$/.test(text.trim()) && Number(text) >= least && Number(text) <= 500;
    if (!good) faults[field] = sentence;
    return Number(text);
  };
  const spell = (line: string, typedFrom: string, typedTo: string, open: boolean) => {
    const from = minute(`${line}.from`, typedFrom, true) ?? 0;
    const to = minute(`${line}.to`, typedTo, !open);
    if (to !== null && !faults[`${line}.from`] && to <= from) faults[`${line}.to`] = said.order;
    return { from, to };
  };

  const people = count('people', typed.people, 0, said.people);
  const from = minute('from', typed.from, false);
  const to = minute('to', typed.to, false);
  if (to !== null && to <= (from ?? 0)) faults.to ??= said.window;

  const rests = typed.rests.map(({ key, ...rest }) => {
    const line = `rests.${key}`;
    const { from: begins, to: ends } = spell(line, rest.from, rest.to, false);
    const all = rest.people.trim() === '';
    const some = all ? {} : { people: count(`${line}.people`, rest.people, 1, said.someOrNone) };
    return { line, rest: { from: begins, to: ends ?? 0, ...some } };
  });
  rests.sort((one, other) => one.rest.from - other.rest.from);
  for (const [at, { line, rest }] of rests.entries()) {
    const before = rests[at - 1]?.rest;
    if (before && rest.from < before.to) faults[`${line}.from`] ??= said.overlap;
  }

  const lent = typed.lent.map(({ key, crew, ...one }) => {
    const line = `lent.${key}`;
    const { from: begins, to: ends } = spell(line, one.from, one.to, true);
    const some = count(`${line}.people`, one.people, 1, said.some);
    if (!others.some(({ id }) => id === crew)) faults[`${line}.crew`] = said.crew;
    return { crew, people: some, from: begins, ...(ends !== null && { to: ends }) };
  });
  lent.sort((one, other) => one.from - other.from);

  const steps = typed.strength.map(({ key, ...step }) => {
    const line = `strength.${key}`;
    const begins = minute(`${line}.from`, step.from, true) ?? 0;
    return {
      line,
      step: { from: begins, people: count(`${line}.people`, step.people, 0, said.people) },
    };
  });
  steps.sort((one, other) => one.step.from - other.step.from);
  for (const [at, { line, step }] of steps.entries()) {
    if (steps[at - 1]?.step.from === step.from) faults[`${line}.from`] ??= said.twice;
  }

  if (Object.keys(faults).length > 0) return { hours: null, faults };
  const strength = steps.map(({ step }) => step);
  return {
    hours: { people, from, to, rests: rests.map(({ rest }) => rest), lent, strength },
    faults,
  };
}

/**
 * The change that makes a crew be there at these hours: only what is other than before, nothing but its id if nothing
 * is.
 */
export function hoursChange(crew: Crew, hours: Omit<CrewHours, 'kind' | 'crew'>): CrewHours {
  const before: Omit<CrewHours, 'kind' | 'crew'> = {
    people: crew.people,
    from: crew.from ?? null,
    to: crew.to ?? null,
    rests: crew.rests ?? [],
    lent: crew.lent ?? [],
    strength: crew.strength ?? [],
  };
  const other = (Object.keys(before) as (keyof typeof before)[]).filter(
    (key) => !alike(hours[key], before[key]),
  );
  return {
    kind: 'crew-hours',
    crew: crew.id,
    ...Object.fromEntries(other.map((key) => [key, hours[key]])),
  };
}

/** The same to the minute: of a time that is kept, whole minutes of the clock are shown and typed. */
function alike(typed: unknown, kept: unknown): boolean {
  if (typeof typed === 'number' && typeof kept === 'number') {
    return typed <= kept && kept < typed + 1;
  }
  if (!isThing(typed) || !isThing(kept)) return typed === kept;
  const keys = Object.keys(typed);
  return (
    keys.length === Object.keys(kept).length && keys.every((key) => alike(typed[key], kept[key]))
  );
}

function isThing(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
