import type { Work } from '../../tasks/work.ts';
import { minutesBetween } from '../instants.ts';
import type { BuildState } from '../state.ts';
import { darkToPlanFor } from './darkAtSite.ts';

/** Minutes after the start of the build at which traffic is wanted; null when nobody said. */
export function minutesAskedFor(state: BuildState): number | null {
  return state.askedFor === null ? null : minutesBetween(state.start, state.askedFor);
}

/**
 * The order of work with each load at the time it came or is now expected, and each crew as strong as it is now: a
 * strength that was told holds until the next change that is planned. With the nights at the site, so that plans are
 * made for the light there is.
 */
export function workAsTold(state: BuildState): Work {
  const crews = state.work.crews.map((crew) => {
    const { fit = crew.people, toldAt = null } = state.crews[crew.id] ?? {};
    const told = toldAt === null ? 0 : minutesBetween(state.start, toldAt);
    const later = crew.strength?.filter(({ from }) => toldAt === null || from > told);
    return { ...crew, people: fit, ...(later && { strength: later }) };
  });
  const loads = state.work.loads.map((load) => {
    const told = state.loads[load.id];
    return told ? { ...load, arrives: minutesBetween(state.start, told.at) } : load;
  });
  const dark = darkToPlanFor(state);
  return { ...state.work, crews, loads, ...(dark && { dark }) };
}
