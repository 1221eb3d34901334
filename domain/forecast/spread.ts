import type { Minutes } from '../tasks/task.ts';
import type { Shape } from './forecast.ts';
import { pertBetaVariance, pertCdf, pertQuantile } from './pert.ts';
import { triangularCdf, triangularQuantile, triangularVariance } from './triangular.ts';

/** Variance of a three-point estimate under a shape, in square minutes. */
export function variance(shape: Shape, minutes: Minutes): number {
  return shape === 'pert' ? pertBetaVariance(minutes) : triangularVariance(minutes);
}

/** Chance (0 to 1) that a task takes at most `x` minutes. */
export function cdf(shape: Shape, minutes: Minutes, x: number): number {
  return shape === 'pert' ? pertCdf(minutes, x) : triangularCdf(minutes, x);
}

/** Minutes that a task keeps to with chance `p` (0 to 1). */
export function quantile(shape: Shape, minutes: Minutes, p: number): number {
  return shape === 'pert' ? pertQuantile(minutes, p) : triangularQuantile(minutes, p);
}
