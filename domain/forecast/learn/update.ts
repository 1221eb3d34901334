import { normalCdf, normalDensity } from '../normal.ts';
import { type Pace, projected } from './pace.ts';

/** What one task says of the factors: the logarithm of seen over expected minutes, and the variance of its own doubt. */
export type Evidence = {
  readonly row: readonly number[];
  readonly log: number;
  readonly variance: number;
};

/**
 * Learns from a finished task: normal prior, normal error, closed form. For one factor with prior N(m, s^2) and an
 * error of variance t^2 the mean becomes (m / s^2 + y / t^2) / (1 / s^2 + 1 / t^2), as in every textbook of Bayesian
 * statistics; with several factors the same, one observation at a time (Kalman, Journal of Basic Engineering 82, 1960).
 * The order of several observations does not matter.
 */
export function learnFinished(pace: Pace, { row, log, variance }: Evidence): Pace {
  const seen = projected(pace, row);
  const total = seen.variance + variance;
  if (total <= 0) return pace;
  return shifted(pace, seen.across, (log - seen.mean) / total, 1 / total);
}

/**
 * Learns from a task still at work: all that is known is that it takes longer than so far. The normal curve times
 * the chance to last that long, matched in mean and variance (Rasmussen and Williams, Gaussian Processes for Machine
 * Learning, 2006, equations 3.82 to 3.86).
 */
export function learnRunning(pace: Pace, { row, log, variance }: Evidence): Pace {
  const seen = projected(pace, row);
  const total = seen.variance + variance;
  if (total <= 0 || log === Number.NEGATIVE_INFINITY) return pace;
  const z = (seen.mean - log) / Math.sqrt(total);
  // Beyond that the curve is its tail, and the ratio below its limit.
  const hazard = z < -8 ? -z : normalDensity(z) / normalCdf(z);
  return shifted(
    pace,
    seen.across,
    hazard / Math.sqrt(total),
    Math.max(0, hazard * (hazard + z)) / total,
  );
}

function shifted(pace: Pace, across: readonly number[], step: number, shrink: number): Pace {
  const size = across.length;
  return {
    ...pace,
    mean: pace.mean.map((mean, k) => mean + across[k]! * step),
    covariance: pace.covariance.map(
      (value, k) => value - across[Math.floor(k / size)]! * across[k % size]! * shrink,
    ),
  };
}
