import type { Fault } from '../../fault.ts';
import { good, type Result } from '../../result.ts';
import { applyChanges, type Change } from '../../tasks/change.ts';
import type { Crew, Work } from '../../tasks/work.ts';
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
    const { fit = crew.people } = state.crews[crew.id] ?? {};
    return crewSinceTold(state, { ...crew, people: fit });
  });
  const loads = state.work.loads.map((load) => {
    const told = state.loads[load.id];
    return told ? { ...load, arrives: minutesBetween(state.start, told.at) } : load;
  });
  const dark = darkToPlanFor(state);
  return { ...state.work, crews, loads, ...(dark && { dark }) };
}

/**
 * What `workAsTold` becomes with changes that a leader tries, or why they do not fit. Changes may have been gathered
 * before a strength was told: what they say of the time before it is over.
 */
export function changedAsTold(
  state: BuildState,
  changes: readonly Change[],
): Result<Work, Fault[]> {
  const changed = applyChanges(workAsTold(state), changes);
  if (!changed.ok) return changed;
  const crews = changed.value.crews.map((crew) => crewSinceTold(state, crew));
  return good({ ...changed.value, crews });
}

/** The crew without the steps of its strength that a later tell has overtaken. */
export function crewSinceTold(state: BuildState, crew: Crew): Crew {
  const { toldAt = null } = state.crews[crew.id] ?? {};
  if (toldAt === null || !crew.strength) return crew;
  const told = minutesBetween(state.start, toldAt);
  return { ...crew, strength: crew.strength.filter(({ from }) => from > told) };
}
