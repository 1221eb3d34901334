import { TZDate } from '@date-fns/tz';
import { format } from 'date-fns';
import { type Instant, millisecondsOf } from '../words/units.ts';

/** An instant as a `datetime-local` control at the site shows it: "2026-11-25T17:00". */
export function toSiteTime(at: Instant, zone: string): string {
  return format(new TZDate(millisecondsOf(at), zone), "yyyy-MM-dd'T'HH:mm");
}

/** What stands in such a control as an instant (ISO 8601 UTC); null when it is no time. */
export function fromSiteTime(text: string, zone: string): string | null {
  const parts = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)/.exec(text);
  if (!parts) return null;
  const [year, month, day, hours, minutes] = parts.slice(1).map(Number) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const at = new TZDate(year, month - 1, day, hours, minutes, zone).getTime();
  return Number.isNaN(at) ? null : new Date(at).toISOString();
}
