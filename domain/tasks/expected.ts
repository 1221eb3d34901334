import type { Shape } from '../forecast/forecast.ts';
import type { Minutes } from './task.ts';

/**
 * Expected minutes of a three-point estimate: PERT-beta `(q + 4l + s) / 6` (Malcolm, Roseboom, Clark, Fazar,
 * Operations Research 7(5), 1959) or triangular `(q + l + s) / 3`. With `likely` alone (all three equal), that.
 */
export function expectedMinutes(minutes: Minutes, shape: Shape): number {
  const { quick, likely, slow } = minutes;
  if (quick === likely && slow === likely) {
    return likely;
  }
  return shape === 'pert' ? (quick + 4 * likely + slow) / 6 : (quick + likely + slow) / 3;
}

/**
 * Whole seconds that a task is planned for: expected minutes times `stretch`, to the nearest second.
 * Work that takes any time at all takes at least one second, so that it holds its people and its room.
 */
export function plannedSeconds(minutes: Minutes, shape: Shape, stretch: number): number {
  const expected = expectedMinutes(minutes, shape) * stretch * 60;
  return expected > 0 ? Math.max(1, Math.round(expected)) : 0;
}

/** Variance in square minutes as the 1959 paper takes it: `((s - q) / 6)` squared, whatever the shape. */
export function pertVariance(minutes: Minutes): number {
  return ((minutes.slow - minutes.quick) / 6) ** 2;
}
