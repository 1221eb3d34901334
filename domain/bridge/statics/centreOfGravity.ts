import type { Run } from './body.ts';

/** Newtons that a kilogram weighs: standard gravity, 3rd General Conference on Weights and Measures, 1901. */
export const gravity = 9.80665;

/** All the mass, in kilograms, and its centre in metres behind the tip; null where there is no mass. */
export function centreOfGravity(
  runs: readonly Run[],
): { readonly kilograms: number; readonly behindTip: number } | null {
  let kilograms = 0;
  let moment = 0;
  for (const run of runs) {
    kilograms += run.kilograms;
    moment += (run.kilograms * (run.from + run.to)) / 2;
  }
  return kilograms === 0 ? null : { kilograms, behindTip: moment / kilograms };
}
