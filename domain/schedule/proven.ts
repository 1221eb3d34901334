import type { Plan } from './plan.ts';

/** So much of a minute is rounding, not time: openings and bounds are whole seconds. */
export const rounding = 1 / 120;

/** Whether no plan for the same work can open before this one. */
export function isProven({
  minutesToOpen,
  lowerBound,
}: Pick<Plan, 'minutesToOpen' | 'lowerBound'>): boolean {
  return minutesToOpen <= lowerBound + rounding;
}
