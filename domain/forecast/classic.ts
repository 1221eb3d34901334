import { expectedMinutes, pertVariance } from '../tasks/expected.ts';
import type { Minutes } from '../tasks/task.ts';
import { normalCdf } from './normal.ts';

/** The textbook single-path estimate. Minutes and square minutes. */
export type ClassicEstimate = {
  readonly mean: number;
  readonly variance: number;
  readonly chanceBy: { readonly minutes: number; readonly chance: number } | null;
};

/**
 * The textbook estimate of one path, for comparison with the forecast: te = (a + 4m + b) / 6 and
 * variance ((b - a) / 6)^2, summed along the path, and the normal curve for the chance to be done by
 * `askedFor`. `waits` are the certain minutes that links on the path add (or, negative, take off). It looks at one
 * path alone, so where paths meet it promises too much.
 * Source: Malcolm, Roseboom, Clark, Fazar, Operations Research 7(5), 1959.
 */
export function classicEstimate(
  minutesOnPath: readonly Minutes[],
  askedFor: number | null,
  waits = 0,
): ClassicEstimate {
  let mean = waits;
  let variance = 0;
  for (const minutes of minutesOnPath) {
    mean += expectedMinutes(minutes, 'pert');
    variance += pertVariance(minutes);
  }
  if (askedFor === null) return { mean, variance, chanceBy: null };
  // Without doubt the path is on time or it is not.
  const certain = askedFor >= mean ? 1 : 0;
  const chance = variance > 0 ? normalCdf((askedFor - mean) / Math.sqrt(variance)) : certain;
  return { mean, variance, chanceBy: { minutes: askedFor, chance } };
}
