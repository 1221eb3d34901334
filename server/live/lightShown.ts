import { lightOf, lightSentence, moonLit, moonSentence } from '#domain/brief/light.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { darkAtSite } from '#domain/progress/views/darkAtSite.ts';
import type { LightShown } from '#shared/wireForecast.ts';

const day = 86_400_000;

/**
 * The light at the site from `now` (ISO 8601 UTC), or from the start of a build to come: that day and the next, and when
 * it is dark. `end` is when the bridge may open, minutes after the start. Null where nobody gave the place.
 */
export function lightShown(state: BuildState, end: number, now: string): LightShown | null {
  const { ground, start, zone } = state;
  if (!ground?.place) return null;
  const { place } = ground;
  const from = new Date(Math.max(Date.parse(start), Date.parse(now))).toISOString();
  const next = new Date(Date.parse(from) + day).toISOString();
  return {
    days: [from, next].map((instant) => ({ ...lightOf(place, instant), moon: moonLit(instant) })),
    dark: [...darkAtSite(state, end)],
    sentence: lightSentence(place, from, zone),
    moonSentence: moonSentence(from),
  };
}
