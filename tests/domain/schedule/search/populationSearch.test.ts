import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { populationSearch } from '#domain/schedule/search/populationSearch.ts';
import { criticalPathLength } from '#domain/schedule/search/problem.ts';
import { checkSm } from '#tests/support/checkSm.ts';
import type { SmInstance } from '#tests/support/smInstance.ts';
import { smProblem, smStarts } from '#tests/support/smProblem.ts';

/** Small instances as their files state them: source and sink, links only from lower to higher jobs. */
const instances: fc.Arbitrary<SmInstance> = fc
  .record({
    tasks: fc.array(
      fc.record({
        duration: fc.integer({ min: 0, max: 8 }),
        demands: fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 5 })),
        before: fc.array(fc.nat({ max: 11 }), { maxLength: 3 }),
      }),
      { minLength: 2, maxLength: 12 },
    ),
    capacities: fc.tuple(fc.integer({ min: 5, max: 9 }), fc.integer({ min: 5, max: 9 })),
  })
  .map(({ tasks, capacities }) => {
    const successors: number[][] = Array.from({ length: tasks.length + 2 }, () => []);
    tasks.forEach((task, at) => {
      const known = [...new Set(task.before.filter((other) => other < at))];
      if (known.length === 0) successors[0]!.push(at + 1);
      for (const other of known) successors[other + 1]!.push(at + 1);
      successors[at + 1]!.push(tasks.length + 1);
    });
    return {
      jobs: tasks.length + 2,
      durations: [0, ...tasks.map(({ duration }) => duration), 0],
      demands: [[0, 0], ...tasks.map(({ demands }) => demands), [0, 0]],
      successors,
      capacities,
    };
  });

describe('the population search', () => {
  it('makes only schedules that the independent checker approves, none shorter than the bound', () => {
    fc.assert(
      fc.property(instances, fc.integer(), (instance, seed) => {
        const problem = smProblem(instance);
        const found = populationSearch(problem, { seed, budget: 60 });
        expect(checkSm(instance, smStarts(found.starts, found.length))).toEqual({
          faults: [],
          makespan: found.length,
        });
        expect(found.bound).toBe(criticalPathLength(problem));
        expect(found.length).toBeGreaterThanOrEqual(found.bound);
      }),
      { numRuns: 200 },
    );
  });

  it('gives the same schedule for the same seed and budget', () => {
    fc.assert(
      fc.property(instances, fc.integer(), (instance, seed) => {
        const search = () => populationSearch(smProblem(instance), { seed, budget: 40 });
        expect(search()).toEqual(search());
      }),
      { numRuns: 50 },
    );
  });

  it('reports each better schedule as it finds it and stops when told to', () => {
    fc.assert(
      fc.property(instances, (instance) => {
        const lengths: number[] = [];
        let asked = 0;
        const found = populationSearch(smProblem(instance), {
          seed: 1,
          budget: Number.POSITIVE_INFINITY,
          report: (length) => lengths.push(length),
          shouldStop: () => {
            asked += 1;
            return asked > 30;
          },
        });
        expect(lengths.at(-1)).toBe(found.length);
        expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
        expect(asked).toBeLessThanOrEqual(32);
      }),
      { numRuns: 100 },
    );
  });
});
