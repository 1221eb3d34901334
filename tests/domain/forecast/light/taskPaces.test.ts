import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulate } from '#domain/forecast/simulate.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { planOf } from '#tests/support/planOf.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { type Small, smallWork } from '#tests/support/smallWork.ts';

const crews = [{ id: 'left', people: 4, rests: [{ from: 30, to: 50 }] }];

function opens(tasks: readonly Small[], dark?: { from: number; to: number }): number {
  const work = smallWork(tasks, { crews });
  const told = dark ? { ...work, dark: { spells: [dark], factor: 2 } } : work;
  const plan = planOf(told);
  const sure = simulate(told, plan, { runs: 20, seed: 1, shape: 'pert', askedFor: null });
  expect(sure.mean).toBeCloseTo(plan.minutesToOpen, 6);
  return sure.mean;
}

describe('A forecast', () => {
  it('of sure minutes is the plan, with rests, daylight and the dark', () => {
    expect(opens([{ id: 'A', minutes: 40, crews: ['left'] }])).toBe(60);
    expect(opens([{ id: 'A', minutes: 40, crews: ['left'], keepOff: true, zones: ['z'] }])).toBe(
      90,
    );
    expect(opens([{ id: 'A', minutes: 10, daylight: true }], { from: 5, to: 70 })).toBe(80);
    // 5 by day, 25 minutes of the dark for 12.5, the rest, and 45 for the 22.5 that are left.
    expect(opens([{ id: 'A', minutes: 40, crews: ['left'] }], { from: 5, to: 700 })).toBe(95);
  });

  it('of any plan with all of that opens by sure minutes when the plan does', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const drawn = randomWork(seed, {
          tasks: 15,
          crews: 3,
          zones: 2,
          joint: true,
          keepOff: true,
          rests: true,
          dark: true,
          crossing: true,
          strength: true,
        });
        const tasks = drawn.tasks.map((task) => {
          const { likely } = task.minutes;
          return { ...task, minutes: { quick: likely, likely, slow: likely } };
        });
        const work = { ...drawn, tasks };
        const plan = makePlan(work, { shape: 'pert', crews: true, effort: 20 });
        if (!plan.ok) throw new Error(plan.reason.sentence);
        const sure = simulate(work, plan.value, {
          runs: 1,
          seed: 1,
          shape: 'pert',
          askedFor: null,
        });
        // Plans count whole seconds, one rounding for each task at most.
        expect(Math.abs(sure.mean - plan.value.minutesToOpen)).toBeLessThan(15 / 60);
      }),
      { numRuns: 60 },
    );
  });
});
