import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { energyBound } from '#domain/schedule/bounds/energy.ts';
import { buildProblem, criticalPathLength } from '#domain/schedule/search/problem.ts';
import { shortestByTrial, smInstances } from '#tests/support/smInstances.ts';
import { smProblem } from '#tests/support/smProblem.ts';

describe('the energy bound', () => {
  it('is never above a shortest schedule nor below the critical path', () => {
    fc.assert(
      fc.property(smInstances(6), (instance) => {
        const bound = energyBound(smProblem(instance));
        expect(bound).toBeLessThanOrEqual(shortestByTrial(instance));
        expect(bound).toBeGreaterThanOrEqual(criticalPathLength(smProblem(instance)));
      }),
      { numRuns: 200 },
    );
  });

  it('counts the units that must be spent between what is before and what is after', () => {
    // Four tasks of 3 at 2 of 3 units, after one of 2 and before one of 1: 2 + 4 * 3 * 2 / 3 + 1.
    const problem = buildProblem({
      durations: [2, 3, 3, 3, 3, 1],
      demands: [[0], [2], [2], [2], [2], [0]],
      capacities: [3],
      links: [1, 2, 3, 4].flatMap((task) => [
        { from: 0, to: task, lag: 2 },
        { from: task, to: 5, lag: 3 },
      ]),
    });
    expect(energyBound(problem)).toBe(11);
  });

  it('never falls when a task takes longer', () => {
    fc.assert(
      fc.property(
        smInstances(10),
        fc.nat(),
        fc.integer({ min: 1, max: 5 }),
        (instance, at, more) => {
          const job = 1 + (at % (instance.jobs - 2));
          const durations = instance.durations.with(job, instance.durations[job]! + more);
          const longer = smProblem({ ...instance, durations });
          expect(energyBound(longer)).toBeGreaterThanOrEqual(energyBound(smProblem(instance)));
        },
      ),
      { numRuns: 200 },
    );
  });
});
