import { clockTime } from '#domain/brief/clockTime.ts';
import { dateTimeGroup as groupOf } from '#domain/brief/dateTimeGroup.ts';
import { minutesAhead, zoneLetter } from '#domain/brief/zoneLetter.ts';

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

/** "143 kN" from newtons; "8.9 kN" where it is less than ten. */
export function kilonewtons(newtons: number): string {
  const value = newtons / 1000;
  return `${value.toFixed(Math.abs(value) < 9.95 ? 1 : 0)} kN`;
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

/** "13:33", time of day at the site; with `from`, an instant on another day says so: "01:20 +1 day". */
export function clock(at: Instant, zone: string, from?: Instant): string {
  return clockTime(iso(at), zone, from === undefined ? undefined : iso(from));
}

/** Keeps a time and its day on one line: "01:20 +1 day" is never broken. */
export function unbroken(text: string): string {
  return text.replace(/ ([+-]\d+) (days?)/g, '\u00a0$1\u00a0$2');
}

/** "Z" for UTC, "A" for one hour ahead and so on; "UTC+05:30" where no letter fits. Once in sight on every page. */
export function zoneName(at: Instant, zone: string): string {
  const ahead = minutesAhead(zone, iso(at));
  if (ahead % 60 === 0 && Math.abs(ahead) <= 720) return zoneLetter(zone, iso(at));
  const two = (value: number): string => String(value).padStart(2, '0');
  const size = Math.abs(ahead);
  return `UTC${ahead < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** "251333ZNOV26": day, time, zone letter, month, year. */
export function dateTimeGroup(at: Instant, zone: string): string {
  return groupOf(iso(at), zone, 'close');
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

/** "2,000" */
export function count(value: number): string {
  return value.toLocaleString('en-GB');
}

/** "1.25": a factor, to hundredths. */
export function factor(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** "Truck 5" from "truck 5": to open a line with. */
export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "1 person", "7 people". */
export function people(count: number): string {
  return count === 1 ? '1 person' : `${count} people`;
}

/** An instant as milliseconds since 1970. */
export function millisecondsOf(at: Instant): number {
  return typeof at === 'number' ? at : Date.parse(at);
}

/** An instant as ISO 8601 UTC. */
export function iso(at: Instant): string {
  return typeof at === 'number' ? new Date(at).toISOString() : at;
}
