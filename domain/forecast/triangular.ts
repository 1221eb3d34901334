import type { Minutes } from '../tasks/task.ts';

// Variance, distribution function and quantile of the triangular distribution, as in any
// statistics text. All arguments and results in minutes.

/** Variance in square minutes: (a^2 + m^2 + b^2 - am - ab - mb) / 18, written as squares so that it cannot go below 0. */
export function triangularVariance({ quick, likely, slow }: Minutes): number {
  return ((likely - quick) ** 2 + (slow - likely) ** 2 + (slow - quick) ** 2) / 36;
}

/** Share of the triangular distribution at or below `x` minutes. */
export function triangularCdf({ quick, likely, slow }: Minutes, x: number): number {
  if (x < quick) return 0;
  if (x >= slow) return 1;
  if (x < likely) return (x - quick) ** 2 / ((slow - quick) * (likely - quick));
  return 1 - (slow - x) ** 2 / ((slow - quick) * (slow - likely));
}

/** Minutes that a share `p` (0 to 1) of the triangular distribution stays at or below. */
export function triangularQuantile({ quick, likely, slow }: Minutes, p: number): number {
  const width = slow - quick;
  if (width <= 0) return quick;
  if (p * width <= likely - quick) return quick + Math.sqrt(p * width * (likely - quick));
  return slow - Math.sqrt((1 - p) * width * (slow - likely));
}
