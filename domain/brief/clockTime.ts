import { minutesAhead } from './zoneLetter.ts';

const day = 86_400_000;

/**
 * Time of day at the site, `16:36`, seconds dropped. Given `from` (ISO 8601), an instant on another day
 * of the site than that carries the days between: `01:20 +1 day`. The zone stands elsewhere, once.
 */
export function clockTime(instant: string, zone: string, from?: string): string {
  const there = siteTime(instant, zone);
  const time = new Date(there).toISOString().slice(11, 16);
  if (from === undefined) return time;
  const days = Math.floor(there / day) - Math.floor(siteTime(from, zone) / day);
  if (days === 0) return time;
  const sign = days > 0 ? '+' : '-';
  return `${time} ${sign}${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'}`;
}

/** Milliseconds that a clock at the site would count if it were UTC. */
function siteTime(instant: string, zone: string): number {
  return Date.parse(instant) + minutesAhead(zone, instant) * 60_000;
}
