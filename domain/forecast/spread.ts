import type { Minutes } from '#domain/tasks/task.ts';
import type { Shape } from './forecast.ts';
import { pertCdf, pertMean, pertQuantile, pertVariance } from './pert.ts';
import {
  triangularCdf,
  triangularMean,
  triangularQuantile,
  triangularVariance,
} from './triangular.ts';

/** Expected minutes of a three-point estimate under a shape. */
export function mean(shape: Shape, minutes: Minutes): number {
  return shape === 'pert' ? pertMean(minutes) : triangularMean(minutes);
}

/** Variance of a three-point estimate under a shape, in square minutes. */
export function variance(shape: Shape, minutes: Minutes): number {
  return shape === 'pert' ? pertVariance(minutes) : triangularVariance(minutes);
}

/** Chance (0 to 1) that a task takes at most `x` minutes. */
export function cdf(shape: Shape, minutes: Minutes, x: number): number {
  return shape === 'pert' ? pertCdf(minutes, x) : triangularCdf(minutes, x);
}

/** Minutes that a task keeps to with chance `p` (0 to 1). */
export function quantile(shape: Shape, minutes: Minutes, p: number): number {
  return shape === 'pert' ? pertQuantile(minutes, p) : triangularQuantile(minutes, p);
}
