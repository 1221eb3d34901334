import { UTCDate } from '@date-fns/utc';
import { addHours, format, getDaysInMonth, parse } from 'date-fns';
import { type Refusal, refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import { hoursOfLetter } from './zoneLetter.ts';

/** A date-time group understood: the instant (ISO 8601 UTC) and the zone letter it was written in. */
export type ParsedGroup = { readonly instant: string; readonly letter: string };

/**
 * Reads a date-time group: `051100Z`, `271545Z FEB 08` with or without spaces, with seconds before the
 * letter where month and year follow, or `0600R` for a time alone. What it leaves out is taken from
 * `reference` (ISO 8601) as the calendar stands in that zone: its month and year, for a time alone its
 * day. A two-digit year is the nearest to the reference. Refuses what is no moment, and the letter J.
 */
export function parseDateTimeGroup(text: string, reference: string): Result<ParsedGroup, Refusal> {
  const found = match(text.trim());
  if (!found) {
    return refuse(
      text,
      'Write day, hours, minutes and zone letter, like 051100Z or 271545Z FEB 08.',
    );
  }
  const hours = hoursOfLetter(found.letter);
  if (hours === null) return refuse(text, letterAdvice(found.letter));
  const there = new UTCDate(addHours(reference, hours));
  const month = found.month === undefined ? there.getMonth() : monthOf(found.month);
  if (month < 0) {
    return refuse(text, `${found.month} is no month; write its first three letters in English.`);
  }
  const year =
    found.year === undefined
      ? there.getFullYear()
      : nearestYear(Number(found.year), there.getFullYear());
  const day = found.day === undefined ? there.getDate() : Number(found.day);
  const fault = clockFault(found) ?? dayFault(day, month, year);
  if (fault) return refuse(text, fault);
  const local = Date.UTC(year, month, day, Number(found.hours), Number(found.minutes));
  const seconds = Number(found.seconds ?? 0);
  const instant = new Date(local + seconds * 1000 - hours * 3_600_000).toISOString();
  return good({ instant, letter: found.letter });
}

type Found = {
  readonly day: string | undefined;
  readonly hours: string;
  readonly minutes: string;
  readonly seconds: string | undefined;
  readonly letter: string;
  readonly month: string | undefined;
  readonly year: string | undefined;
};

/** Splits the text by how many digits stand before the letter: 4 a time, 6 with the day, 8 with seconds too. */
function match(text: string): Found | null {
  const parts = /^(\d{4}|\d{6}|\d{8})\s*([A-Za-z])(?:\s*([A-Za-z]{3})\s*(\d{2}))?$/.exec(text);
  if (!parts) return null;
  const [, digits, letter, month, year] = parts;
  const timeAlone = digits!.length === 4;
  // A month says of which month the day is: it needs one.
  if (timeAlone && month !== undefined) return null;
  const time = timeAlone ? digits! : digits!.slice(2);
  return {
    day: timeAlone ? undefined : digits!.slice(0, 2),
    hours: time.slice(0, 2),
    minutes: time.slice(2, 4),
    seconds: time.length > 4 ? time.slice(4) : undefined,
    letter: letter!,
    month,
    year,
  };
}

/** 0 to 11, or -1 for what is no month. */
function monthOf(name: string): number {
  const month = parse(name, 'MMM', new UTCDate(0)).getMonth();
  return Number.isNaN(month) ? -1 : month;
}

function letterAdvice(letter: string): string {
  if (letter.toUpperCase() === 'J') {
    return 'The letter J is whatever the local time is and cannot be worked with; write the zone letter of the site, or Z.';
  }
  return `The zone letter is a capital, A to Z without J; write ${letter.toUpperCase()} if that is meant.`;
}

function clockFault({ hours, minutes, seconds }: Found): string | null {
  if (hours === '24') return 'The last minute of a day is 2359; write 0000 of the next day.';
  if (Number(hours) > 23) return `There is no hour ${hours}; hours run from 00 to 23.`;
  if (Number(minutes) > 59) return `There is no minute ${minutes}; minutes run from 00 to 59.`;
  if (Number(seconds ?? 0) > 59) return `There is no second ${seconds}; seconds run from 00 to 59.`;
  return null;
}

function dayFault(day: number, month: number, year: number): string | null {
  const first = new UTCDate(year, month, 1);
  const last = getDaysInMonth(first);
  if (day >= 1 && day <= last) return null;
  return `There is no day ${day} in ${format(first, 'MMMM yyyy')}; it has ${last} days.`;
}

/** The year that ends in these two digits and lies within fifty years of the reference. */
function nearestYear(digits: number, reference: number): number {
  const century = Math.round((reference - digits) / 100) * 100;
  return century + digits;
}

function refuse(text: string, advice: string): Result<never, Refusal> {
  return bad(refusal('form-wrong', `"${text}" is no date-time group. ${advice}`));
}
