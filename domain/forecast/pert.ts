import { expectedMinutes } from '../tasks/expected.ts';
import type { Minutes } from '../tasks/task.ts';
import { incompleteBeta, logBeta } from './incompleteBeta.ts';

/** A beta distribution on 0 to 1; `logB` is the logarithm of its normalising constant. */
export type Beta = { readonly alpha: number; readonly beta: number; readonly logB: number };

/**
 * The beta distribution behind a three-point estimate, on 0 (quick) to 1 (slow).
 * Shape parameters: alpha = 1 + 4 (m - a) / (b - a), beta = 1 + 4 (b - m) / (b - a)
 * (probsee.com/p/PERT_distribution). Only meaningful when quick < slow.
 */
export function pertBeta({ quick, likely, slow }: Minutes): Beta {
  const alpha = 1 + (4 * (likely - quick)) / (slow - quick);
  const beta = 1 + (4 * (slow - likely)) / (slow - quick);
  return { alpha, beta, logB: logBeta(alpha, beta) };
}

/**
 * Variance of PERT-beta in square minutes, (mu - a)(b - mu) / 7: the exact one of that beta
 * distribution (its parameters sum to 6), not the classic ((b - a) / 6)^2.
 */
export function pertBetaVariance(minutes: Minutes): number {
  const mean = expectedMinutes(minutes, 'pert');
  return ((mean - minutes.quick) * (minutes.slow - mean)) / 7;
}

/** Share of PERT-beta at or below `x` minutes. */
export function pertCdf(minutes: Minutes, x: number): number {
  const { quick, slow } = minutes;
  if (slow <= quick) return x < quick ? 0 : 1;
  const { alpha, beta, logB } = pertBeta(minutes);
  return incompleteBeta((x - quick) / (slow - quick), alpha, beta, logB);
}

/** Minutes that a share `p` (0 to 1) of PERT-beta stays at or below. */
export function pertQuantile(minutes: Minutes, p: number): number {
  const { quick, slow } = minutes;
  if (slow <= quick) return quick;
  const shape = pertBeta(minutes);
  const upper = { alpha: shape.beta, beta: shape.alpha, logB: shape.logB };
  // Solved from the nearer end, so that neither tail loses digits.
  const x = p <= 0.5 ? betaQuantile(shape, p) : 1 - betaQuantile(upper, 1 - p);
  return quick + (slow - quick) * x;
}

/**
 * The `x` in 0 to 1 that a share `p` of a beta distribution stays below: Newton steps, kept inside a
 * bracket that shrinks. `guess` speeds up callers that ask for neighbouring shares one after another.
 */
export function betaQuantile({ alpha, beta, logB }: Beta, p: number, guess?: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  let low = 0;
  let high = 1;
  // The leading term of the series at 0: I_x(a, b) = x^a / (a B(a, b)) + ...
  let x = guess ?? Math.min(0.5, Math.exp((Math.log(p * alpha) + logB) / alpha));
  for (let step = 0; step < 100; step++) {
    const error = incompleteBeta(x, alpha, beta, logB) - p;
    if (error > 0) high = x;
    else low = x;
    const density = Math.exp((alpha - 1) * Math.log(x) + (beta - 1) * Math.log1p(-x) - logB);
    const newton = x - error / density;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - x) <= 1e-13 * x) return next;
    x = next;
  }
  return x;
}
