import type { Fault } from '../../fault.ts';
import type { Result } from '../../result.ts';
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
  return applyChanges(
    workAsTold(state),
    changes.map((change): Change => {
      if (change.kind === 'crew') return { ...change, crew: crewSinceTold(state, change.crew) };
      return change.kind === 'crew-hours' ? sinceTold(state, change.crew, change) : change;
    }),
  );
}

/** The crew without what a later tell of its strength has overtaken. */
export function crewSinceTold(state: BuildState, crew: Crew): Crew {
  return sinceTold(state, crew.id, crew);
}

/**
 * Without steps of strength before it was told, and without people who were lent or rested but were back by then: those
 * who are fit now need not have been enough for that.
 */
function sinceTold<Hours extends Pick<Crew, 'strength' | 'lent' | 'rests'>>(
  state: BuildState,
  crew: string,
  hours: Hours,
): Hours {
  const { toldAt = null } = state.crews[crew] ?? {};
  if (toldAt === null) return hours;
  const told = minutesBetween(state.start, toldAt);
  const { strength, lent, rests } = hours;
  return {
    ...hours,
    ...(strength && { strength: strength.filter(({ from }) => from > told) }),
    ...(lent && { lent: lent.filter(({ to }) => to === undefined || to > told) }),
    ...(rests && { rests: rests.filter(({ to, people }) => people === undefined || to > told) }),
  };
}
