import { byMoment } from './instants.ts';
import type { BuildState } from './state.ts';

/** Readings kept, so that a withdrawn one leaves the one before it. */
const kept = 12;

/** The water as read last, with one more reading or one less. */
export function waterStanding(tells: BuildState['water']['tells']): BuildState['water'] {
  const readings = lastRead(tells);
  const last = readings.at(-1);
  return {
    rise: last?.rise ?? null,
    level: readings.findLast(({ level }) => level !== null)?.level ?? null,
    at: last?.at ?? null,
    tells: readings,
  };
}

/** The wind as read last, with one more reading or one less. */
export function windStanding(tells: BuildState['wind']['tells']): BuildState['wind'] {
  const readings = lastRead(tells);
  const last = readings.at(-1);
  return { speed: last?.speed ?? null, at: last?.at ?? null, tells: readings };
}

function lastRead<Reading extends { readonly entry: number; readonly at: string }>(
  tells: readonly Reading[],
): Reading[] {
  return tells.toSorted(byMoment).slice(-kept);
}
