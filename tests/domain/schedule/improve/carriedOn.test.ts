import fc from 'fast-check';
import { expect, it } from 'vitest';
import { carriedOn } from '#domain/schedule/improve/carriedOn.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { randomWork } from '#tests/support/randomWork.ts';

it('A plan that is kept to opens when it says, with rests, the dark, crossing and crews that change', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
      const work = randomWork(seed, {
        tasks: 15,
        crews: 3,
        zones: 2,
        joint: true,
        keepOff: true,
        equipment: true,
        rests: true,
        dark: true,
        crossing: true,
        strength: true,
        skilled: true,
      });
      const plan = makePlan(work, { shape: 'pert', crews: true, effort: 20 });
      if (!plan.ok) throw new Error(plan.reason.sentence);
      expect(carriedOn(work, plan.value, plan.value, 0)).toBeCloseTo(plan.value.minutesToOpen, 6);
    }),
    { numRuns: 60 },
  );
});
