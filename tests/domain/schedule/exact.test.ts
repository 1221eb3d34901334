import { describe, expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { exactOpening } from '#tests/support/exactOpening.ts';
import { tightWork } from '#tests/support/tightWork.ts';

describe('Small orders of work solved to proof', () => {
  const seeds = Array.from({ length: 24 }, (_, at) => at + 1);
  const solved = seeds.map((seed) => {
    const work = tightWork(seed);
    const plan = makePlan(work, { shape: 'pert', crews: true });
    if (!plan.ok) throw new Error(plan.reason.sentence);
    return { seed, work, plan: plan.value, optimum: exactOpening(work) };
  });

  it.each(solved)(
    'has bound, optimum and plan in this order ($seed)',
    ({ work, plan, optimum }) => {
      expect(checkPlan(work, plan, { crews: true })).toEqual([]);
      expect(plan.lowerBound).toBeLessThanOrEqual(optimum + 1e-9);
      expect(plan.minutesToOpen).toBeGreaterThanOrEqual(optimum - 1e-9);
    },
  );

  it('is planned at the optimum nearly always', () => {
    const met = solved.filter(({ plan, optimum }) => plan.minutesToOpen < optimum + 1e-9);
    expect(met.length).toBeGreaterThanOrEqual(0.9 * solved.length);
  });
});
