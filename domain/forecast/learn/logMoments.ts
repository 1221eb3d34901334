import type { Minutes } from '../../tasks/task.ts';
import type { Shape } from '../forecast.ts';
import { quantile } from '../spread.ts';

const cells = 48;

/**
 * Mean and variance of the logarithm of the minutes of a three-point estimate, from quantiles at the middles of
 * equal shares. Null for a task that may take no time at all: such a one says nothing of anybody's pace.
 */
export function logMoments(
  shape: Shape,
  minutes: Minutes,
): { readonly mean: number; readonly variance: number } | null {
  if (minutes.quick <= 0) return null;
  if (minutes.slow <= minutes.quick) return { mean: Math.log(minutes.likely), variance: 0 };
  let sum = 0;
  let squares = 0;
  for (let k = 0; k < cells; k++) {
    const log = Math.log(quantile(shape, minutes, (k + 0.5) / cells));
    sum += log;
    squares += log * log;
  }
  const mean = sum / cells;
  return { mean, variance: Math.max(0, squares / cells - mean * mean) };
}
