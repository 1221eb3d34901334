import { TZDate } from '@date-fns/tz';
import { differenceInCalendarDays, format } from 'date-fns';

/**
 * Time of day at the site, `16:36`, seconds dropped. Given `from` (ISO 8601), an instant on another day
 * of the site than that carries the days between: `01:20 +1 day`. The zone stands elsewhere, once.
 */
export function clockTime(instant: string, zone: string, from?: string): string {
  const there = new TZDate(instant, zone);
  const time = format(there, 'HH:mm');
  if (from === undefined) return time;
  const days = differenceInCalendarDays(there, new TZDate(from, zone));
  if (days === 0) return time;
  const sign = days > 0 ? '+' : '-';
  return `${time} ${sign}${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'}`;
}
