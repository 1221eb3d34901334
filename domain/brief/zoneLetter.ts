import { tzOffset } from '@date-fns/tz';

/**
 * Hours ahead of UTC of each zone letter (ACP 121 as quoted by en.wikipedia.org/wiki/Military_time_zone).
 * J is the observer's own time, whatever that is, and stands for no offset.
 */
const letters = 'YXWVUTSRQPONZABCDEFGHIKLM';

/** Hours ahead of UTC that a zone letter stands for, -12 to 12; null for J and for anything that is no zone letter. */
export function hoursOfLetter(letter: string): number | null {
  const index = letter.length === 1 ? letters.indexOf(letter) : -1;
  return index < 0 ? null : index - 12;
}

/** Minutes ahead of UTC of an IANA zone at an instant (ISO 8601); 0 where the zone is not known. */
export function minutesAhead(zone: string, instant: string): number {
  const minutes = tzOffset(zone, new Date(instant));
  return Number.isNaN(minutes) ? 0 : minutes;
}

/**
 * The zone letter of an IANA zone at an instant (ISO 8601). `Z` where no plain letter fits: half-hour
 * zones, zones more than 12 hours off and unknown ones report in Z.
 */
export function zoneLetter(zone: string, instant: string): string {
  return letters[minutesAhead(zone, instant) / 60 + 12] ?? 'Z';
}
