import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalPathLength } from '#domain/schedule/search/problem.ts';
import { type Found, search } from '#domain/schedule/search/search.ts';
import { checkSm } from '#tests/support/checkSm.ts';
import type { SmInstance } from '#tests/support/smInstance.ts';
import { shortestByTrial, smInstances } from '#tests/support/smInstances.ts';
import { smProblem, smStarts } from '#tests/support/smProblem.ts';

function approved(instance: SmInstance, found: Found): void {
  const checked = checkSm(instance, smStarts(found.starts, found.length));
  expect(checked).toEqual({ faults: [], makespan: found.length });
}

describe('the search', () => {
  it('makes only schedules that the independent checker approves, none shorter than the bound', () => {
    fc.assert(
      fc.property(
        smInstances(14),
        fc.integer(),
        fc.nat({ max: 80 }),
        (instance, seed, schedules) => {
          const problem = smProblem(instance);
          const found = search(problem, { seed, schedules });
          approved(instance, found);
          expect(found.length).toBeGreaterThanOrEqual(found.lower);
          expect(found.lower).toBeGreaterThanOrEqual(criticalPathLength(problem));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('proves what trying every order finds, and stops by itself', () => {
    fc.assert(
      fc.property(smInstances(6), fc.integer(), (instance, seed) => {
        const found = search(smProblem(instance), { seed });
        approved(instance, found);
        expect(found.length).toBe(shortestByTrial(instance));
        expect(found.lower).toBe(found.length);
      }),
      { numRuns: 200 },
    );
  });

  it('gives the same schedule for the same seed and number of schedules', () => {
    fc.assert(
      fc.property(smInstances(14), fc.integer(), (instance, seed) => {
        const again = () => search(smProblem(instance), { seed, schedules: 60 });
        expect(again()).toEqual(again());
      }),
      { numRuns: 60 },
    );
  });

  it('tells each shorter schedule and each higher bound as it finds it, the last being the result', () => {
    fc.assert(
      fc.property(smInstances(14), fc.integer(), (instance, seed) => {
        const lengths: number[] = [];
        const bounds: number[] = [];
        const found = search(
          smProblem(instance),
          { seed, schedules: 200 },
          {
            onSchedule: (_, length) => lengths.push(length),
            onBound: (lower) => bounds.push(lower),
          },
        );
        expect(lengths.at(-1)).toBe(found.length);
        expect(lengths).toEqual([...new Set(lengths)].sort((a, b) => b - a));
        expect(bounds.at(-1)).toBe(found.lower);
        expect(bounds).toEqual([...new Set(bounds)].sort((a, b) => a - b));
      }),
      { numRuns: 100 },
    );
  });

  it('makes one schedule before it heeds a stop, and none long after', () => {
    fc.assert(
      fc.property(smInstances(14), (instance) => {
        const found = search(smProblem(instance), { seed: 1, shouldStop: () => true });
        approved(instance, found);
        expect(found.schedules).toBeLessThanOrEqual(4);
      }),
      { numRuns: 100 },
    );
  });

  it('spends no more schedules than it may, but for the one under way', () => {
    fc.assert(
      fc.property(smInstances(14), fc.integer({ min: 1, max: 500 }), (instance, schedules) => {
        const found = search(smProblem(instance), { seed: 1, schedules });
        // A run of the exact part looks up only at dead ends.
        expect(found.schedules).toBeLessThan(schedules + 12);
      }),
      { numRuns: 100 },
    );
  });
});
