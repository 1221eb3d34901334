import { TZDate } from '@date-fns/tz';
import { format } from 'date-fns';

/** Instants as the pages hold them: ISO 8601 UTC or milliseconds since 1970. */
export type Instant = string | number;

/** "31.0 m" */
export function metres(value: number, places = 1): string {
  return `${value.toFixed(places)} m`;
}

/** "4 cm" from metres. */
export function centimetres(value: number): string {
  return `${Math.round(value * 100)} cm`;
}

/** "1.15 t" from kilograms. */
export function tonnes(kilograms: number): string {
  return `${(kilograms / 1000).toFixed(kilograms < 10_000 ? 2 : 1)} t`;
}

/** "4 min", "1 h 05 min", from minutes. */
export function minutes(value: number): string {
  const whole = Math.round(value);
  if (Math.abs(whole) < 60) return `${whole} min`;
  const rest = Math.abs(whole) % 60;
  return `${Math.trunc(whole / 60)} h ${String(rest).padStart(2, '0')} min`;
}

/** How long ago: "6 s", "4 min", "2 h 05 min", from milliseconds. */
export function span(milliseconds: number): string {
  const seconds = Math.max(0, Math.round(milliseconds / 1000));
  return seconds < 120 ? `${seconds} s` : minutes(Math.floor(seconds / 60));
}

/** "13:33", time of day at the site. The zone stands once in sight: see `zoneName`. */
export function clock(at: Instant, zone: string): string {
  return format(new TZDate(millisecondsOf(at), zone), 'HH:mm');
}

/** "Z" for UTC, "A" for one hour ahead and so on; "+05:30" where no letter fits. */
export function zoneName(at: Instant, zone: string): string {
  const ahead = -new TZDate(millisecondsOf(at), zone).getTimezoneOffset();
  const letters = 'YXWVUTSRQPONZABCDEFGHIKLM';
  const letter = ahead % 60 === 0 ? letters[ahead / 60 + 12] : undefined;
  return letter ?? format(new TZDate(millisecondsOf(at), zone), 'xxx');
}

/** "251333ZNOV26": day, time, zone letter, month, year. */
export function dateTimeGroup(at: Instant, zone: string): string {
  const there = new TZDate(millisecondsOf(at), zone);
  const month = format(there, 'MMM').toUpperCase();
  return `${format(there, 'ddHHmm')}${zoneName(at, zone)}${month}${format(there, 'yy')}`;
}

/** Minutes after the start of the build as milliseconds since 1970. */
export function atMinute(start: string, minute: number): number {
  return Date.parse(start) + minute * 60_000;
}

/** Milliseconds since 1970 as minutes after the start of the build. */
export function minuteOf(start: string, at: Instant): number {
  return (millisecondsOf(at) - Date.parse(start)) / 60_000;
}

/** "55 %" from 0 to 1. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** "1 person", "7 people". */
export function people(count: number): string {
  return count === 1 ? '1 person' : `${count} people`;
}

export function millisecondsOf(at: Instant): number {
  return typeof at === 'number' ? at : Date.parse(at);
}
