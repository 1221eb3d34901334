import { TZDate } from '@date-fns/tz';
import { parseDateTimeGroup } from '#domain/brief/parseDateTimeGroup.ts';
import { zoneLetter } from '#domain/brief/zoneLetter.ts';
import { clock, dateTimeGroup, type Instant, iso, millisecondsOf } from '../words/units.ts';

const dayLong = 86_400_000;

/**
 * A moment as people at the site write it, as ISO 8601 UTC: a time of day (`17:00`, `1700`) is the first such time at or
 * after `from`; `251700` has the day, `251700Z NOV 26` everything. Without a letter it is the site's time. Null when it
 * is no moment.
 */
export function readSiteTime(text: string, zone: string, from: Instant): string | null {
  const typed = text.trim();
  const [, hours, minutes] = /^([01]?\d|2[0-3]):?([0-5]\d)$/.exec(typed) ?? [];
  if (hours !== undefined && minutes !== undefined) {
    return nextTime(Number(hours), Number(minutes), zone, millisecondsOf(from));
  }
  const letter = zoneLetter(zone, iso(from));
  const group = /^\d{6}$/.test(typed) ? `${typed}${letter}` : typed.toUpperCase();
  const parsed = parseDateTimeGroup(group, iso(from));
  return parsed.ok ? parsed.value.instant : null;
}

function nextTime(hours: number, minutes: number, zone: string, from: number): string {
  const there = new TZDate(from, zone);
  const at = new TZDate(
    there.getFullYear(),
    there.getMonth(),
    there.getDate(),
    hours,
    minutes,
    zone,
  ).getTime();
  // The first moment of `from`'s own minute still counts as that time.
  return new Date(at < from - 60_000 ? at + dayLong : at).toISOString();
}

/** The shortest text that is read back as this moment: the time of day within a day after `from`, else with its date. */
export function writeSiteTime(at: Instant, zone: string, from: Instant): string {
  const time = clock(at, zone);
  const same = readSiteTime(time, zone, from);
  return same !== null && Math.abs(millisecondsOf(same) - millisecondsOf(at)) < 60_000
    ? time
    : dateTimeGroup(at, zone);
}
