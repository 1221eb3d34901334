import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hindrance, opensKeptTo } from '#domain/schedule/improve/keptTo.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Work } from '#domain/tasks/work.ts';
import { planOf } from '#tests/support/planOf.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const none: Past = { now: 0, tasks: [] };

const crews = [
  { id: 'left', people: 4 },
  { id: 'right', people: 4 },
];

describe('A plan that is kept to', () => {
  it('opens when it says, with rests, the dark, crossing and crews that change', () => {
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
          loads: true,
        });
        const plan = planOf(work, { effort: 20 });
        expect(hindrance({ work, plan }, none)).toBeNull();
        expect(opensKeptTo({ work, plan }, none)).toBeCloseTo(plan.minutesToOpen, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('never opens earlier for a load that comes later', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e9 }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (seed, late) => {
          const work = randomWork(seed, { tasks: 12, crews: 3, loads: true, dark: true });
          const plan = planOf(work, { effort: 20 });
          const told = {
            ...work,
            loads: work.loads.map((load) => ({ ...load, arrives: load.arrives + late })),
          };
          const least = opensKeptTo({ work, plan }, none) - 1e-9;
          expect(opensKeptTo({ work: told, plan }, none)).toBeGreaterThanOrEqual(least);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('goes on in the dark that came since it was made', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 20, people: 4, crews: ['left'] },
        { id: 'B', minutes: 40, people: 4, crews: ['left'], after: ['A'] },
      ],
      { crews },
    );
    const plan = planOf(work);
    const dark = { spells: [{ from: 40, to: 600 }], factor: 1.5 };
    // By hand: 20 of A, 20 of B by day, and the other 20 of B in the dark take 30.
    expect(opensKeptTo({ work: { ...work, dark }, plan }, none)).toBeCloseTo(70, 6);
  });

  it('takes longer by what is done with fewer people, and is hindered', () => {
    const task = { id: 'A', minutes: 30, people: [2, 4, 4] as const, crews: ['left'] };
    const work = smallWork([task], { crews });
    const plan = planOf(work);
    const fewer: Work = { ...work, crews: [{ ...work.crews[0]!, people: 3 }, work.crews[1]!] };
    expect(hindrance({ work: fewer, plan }, none)).toBe('people');
    // Three in place of four: 30 minutes take 40.
    expect(opensKeptTo({ work: fewer, plan }, none)).toBeCloseTo(40, 6);
    // Those who have begun it are those who are at it, whatever the crew has otherwise.
    const at = (people: number): Past => ({
      now: 10,
      tasks: [{ task: 'A', status: 'at-work', start: 0, crews: [{ crew: 'left', people }] }],
    });
    expect(hindrance({ work: fewer, plan }, at(2))).toBeNull();
    expect(opensKeptTo({ work: fewer, plan }, at(2))).toBeCloseTo(60, 6);
  });
});
