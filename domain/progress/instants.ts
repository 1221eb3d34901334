import { addMilliseconds, differenceInMilliseconds } from 'date-fns';

const instant = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?Z$/;

/** Whether a text is an instant as the record keeps them: ISO 8601 in UTC, with a Z. */
export function isInstant(text: string): boolean {
  return instant.test(text) && !Number.isNaN(Date.parse(text));
}

/** Minutes from one instant to another; negative when the other is earlier. */
export function minutesBetween(from: string, to: string): number {
  return differenceInMilliseconds(to, from) / 60_000;
}

/** The instant so many minutes later, ISO 8601 UTC. */
export function minutesAfter(from: string, minutes: number): string {
  return addMilliseconds(from, Math.round(minutes * 60_000)).toISOString();
}

/** Orders things by when they happened and, at one moment, by arrival. */
export function byMoment(
  one: { readonly at: string; readonly entry: number },
  other: { readonly at: string; readonly entry: number },
): number {
  return Date.parse(one.at) - Date.parse(other.at) || one.entry - other.entry;
}
