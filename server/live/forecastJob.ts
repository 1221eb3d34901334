import { createHash } from 'node:crypto';
import type { Seen } from '#domain/forecast/moves/seen.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { minutesAskedFor } from '#domain/progress/views/asTold.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import type { ForecastJob } from '../workers/planner.ts';

/** One seed per build: two forecasts of it draw the same luck, so that their difference is the plan's. */
export function seedOf(build: string): number {
  return createHash('sha256').update(build).digest().readUInt32BE() >>> 1;
}

/** Why there is nothing to forecast, in words for the page; null when there is. */
export function whyNoForecast(state: BuildState): string | null {
  if (state.plan === null) return 'No plan has been accepted yet.';
  if (openedOf(state).open) return 'The bridge is open to traffic.';
  return null;
}

/** What a forecast of what is seen needs. */
export function forecastJob(
  build: string,
  state: BuildState,
  seen: Seen,
  runs: number,
): ForecastJob {
  return { ...seen, askedFor: minutesAskedFor(state), runs, seed: seedOf(build) };
}
