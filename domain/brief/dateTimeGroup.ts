import { hoursOfLetter, zoneLetter } from './zoneLetter.ts';

/**
 * How a date-time group is written (en.wikipedia.org/wiki/Date-time_group; months in capitals as in
 * message traffic): `short` 251636Z, `full` 251636Z NOV 26, `close` 251636ZNOV26, `stamp` with
 * seconds 25163600ZNOV26.
 */
export type GroupForm = 'short' | 'full' | 'close' | 'stamp';

/** Three-letter English months, as date-time groups write them. */
export const months = [
  'JAN',
  'FEB',
  'MAR',
  'APR',
  'MAY',
  'JUN',
  'JUL',
  'AUG',
  'SEP',
  'OCT',
  'NOV',
  'DEC',
] as const;

/**
 * An instant (ISO 8601) as a date-time group in a zone: a zone letter, or an IANA name whose letter is
 * looked up. Where no letter fits (J, half-hour and unknown zones) the group is in Z, and says so.
 * Seconds are dropped, not rounded, as a clock shows them.
 */
export function dateTimeGroup(instant: string, letterOrZone: string, form: GroupForm): string {
  const letter = letterOrZone.length === 1 ? letterOrZone : zoneLetter(letterOrZone, instant);
  const hours = hoursOfLetter(letter);
  const there = new Date(Date.parse(instant) + (hours ?? 0) * 3_600_000);
  const two = (value: number) => String(value).padStart(2, '0');
  const time = `${two(there.getUTCDate())}${two(there.getUTCHours())}${two(there.getUTCMinutes())}`;
  const zone = hours === null ? 'Z' : letter;
  const month = months[there.getUTCMonth()]!;
  const year = two(there.getUTCFullYear() % 100);
  switch (form) {
    case 'short':
      return `${time}${zone}`;
    case 'full':
      return `${time}${zone} ${month} ${year}`;
    case 'close':
      return `${time}${zone}${month}${year}`;
    case 'stamp':
      return `${time}${two(there.getUTCSeconds())}${zone}${month}${year}`;
  }
}
