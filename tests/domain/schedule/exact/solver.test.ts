import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ExactSolver } from '#domain/schedule/exact/solver.ts';
import { Decoder } from '#domain/schedule/search/decoder.ts';
import { Random } from '#domain/schedule/search/random.ts';
import { checkSm } from '#tests/support/checkSm.ts';
import type { SmInstance } from '#tests/support/smInstance.ts';
import { shortestByTrial, smInstances } from '#tests/support/smInstances.ts';
import { smProblem, smStarts } from '#tests/support/smProblem.ts';

/** A solver that begins with the schedule of the order of the file. */
function solverOf(instance: SmInstance, seed: number): ExactSolver {
  const problem = smProblem(instance);
  const order = Int32Array.from({ length: problem.tasks }, (_, task) => task);
  const starts = new Int32Array(problem.tasks);
  const effort = { placements: 0 };
  const length = new Decoder(problem, effort).decode(order, starts);
  return new ExactSolver(problem, starts, length, new Random(seed), effort, () => false);
}

describe('the exact solver', () => {
  it('finds shorter schedules until none is, and then says so', () => {
    fc.assert(
      fc.property(smInstances(6), fc.integer(), (instance, seed) => {
        const solver = solverOf(instance, seed);
        const hold = new Int32Array(0);
        for (;;) {
          const before = solver.length;
          const outcome = solver.run({ deadEnds: 1000, leanOn: solver.starts, hold });
          if (outcome !== 'shorter') {
            expect(outcome).toBe('none shorter');
            break;
          }
          expect(solver.length).toBeLessThan(before);
          expect(checkSm(instance, smStarts(solver.starts, solver.length))).toEqual({
            faults: [],
            makespan: solver.length,
          });
        }
        expect(solver.length).toBe(shortestByTrial(instance));
      }),
      { numRuns: 200 },
    );
  });

  it('keeps a bound that no schedule goes below, whatever it holds in place', () => {
    fc.assert(
      fc.property(smInstances(6), fc.integer(), fc.nat(), (instance, seed, from) => {
        const solver = solverOf(instance, seed);
        const shortest = shortestByTrial(instance);
        const tasks = solver.starts.length;
        for (let turn = 0; turn < 6; turn++) {
          const held = Math.floor(tasks / 2);
          const hold = Int32Array.from({ length: held }, (_, at) => (from + turn + at) % tasks);
          const outcome = solver.run({ deadEnds: 2, leanOn: solver.starts, hold });
          expect(solver.length).toBeGreaterThanOrEqual(shortest);
          if (outcome === 'none shorter') expect(solver.length).toBe(shortest);
          if (outcome === 'none shorter') return;
          expect(solver.lower).toBeLessThanOrEqual(shortest);
        }
      }),
      { numRuns: 200 },
    );
  });
});
