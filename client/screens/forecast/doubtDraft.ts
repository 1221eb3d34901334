import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import type { DoubtEvent } from '#domain/forecast/doubt/events.ts';

/** A part of the doubt with a switch and a figure of its own. */
type Named = Exclude<keyof Doubt, 'format' | 'version' | 'own' | 'events'>;

/** A part by its name, or an event by its id. */
export type DoubtPart =
  | { readonly part: 'own' | Named }
  | { readonly part: 'event'; readonly id: string };

const parts: readonly Named[] = [
  'day',
  'crews',
  'learning',
  'light',
  'weather',
  'training',
  'site',
  'dress',
  'heat',
];

/** The doubt with one source counted, or no longer. */
export function switched(doubt: Doubt, of: DoubtPart, on: boolean): Doubt {
  if (of.part === 'own') return { ...doubt, own: on };
  if (of.part === 'event') return withEvent(doubt, of.id, (event) => ({ ...event, on }));
  return { ...doubt, [of.part]: { ...doubt[of.part], on } };
}

/** The doubt with one event otherwise. */
export function withEvent(
  doubt: Doubt,
  id: string,
  change: (event: DoubtEvent) => DoubtEvent,
): Doubt {
  return {
    ...doubt,
    events: doubt.events.map((event) => (event.id === id ? change(event) : event)),
  };
}

/** How many sources stand otherwise in the second. */
export function changesBetween(one: Doubt, other: Doubt): number {
  const events = other.events.filter(
    (event) =>
      !same(
        event,
        one.events.find(({ id }) => id === event.id),
      ),
  );
  const named = parts.filter((part) => !same(one[part], other[part]));
  return Number(one.own !== other.own) + named.length + events.length;
}

function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
