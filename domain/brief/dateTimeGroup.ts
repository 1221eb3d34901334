import { UTCDate } from '@date-fns/utc';
import { addHours, format } from 'date-fns';
import { hoursOfLetter, zoneLetter } from './zoneLetter.ts';

/**
 * How a date-time group is written (en.wikipedia.org/wiki/Date-time_group; months in capitals as in
 * message traffic): `short` 251636Z, `full` 251636Z NOV 26, `close` 251636ZNOV26, `stamp` with
 * seconds 25163600ZNOV26.
 */
export type GroupForm = 'short' | 'full' | 'close' | 'stamp';

/**
 * An instant (ISO 8601) as a date-time group in a zone: a zone letter, or an IANA name whose letter is
 * looked up. Where no letter fits (J, half-hour and unknown zones) the group is in Z, and says so.
 * Seconds are dropped, not rounded, as a clock shows them.
 */
export function dateTimeGroup(instant: string, letterOrZone: string, form: GroupForm): string {
  const letter = letterOrZone.length === 1 ? letterOrZone : zoneLetter(letterOrZone, instant);
  const hours = hoursOfLetter(letter);
  const there = new UTCDate(addHours(instant, hours ?? 0));
  const zone = hours === null ? 'Z' : letter;
  const month = format(there, 'MMM').toUpperCase();
  switch (form) {
    case 'short':
      return format(there, `ddHHmm'${zone}'`);
    case 'full':
      return format(there, `ddHHmm'${zone} ${month}' yy`);
    case 'close':
      return format(there, `ddHHmm'${zone}${month}'yy`);
    case 'stamp':
      return format(there, `ddHHmmss'${zone}${month}'yy`);
  }
}
