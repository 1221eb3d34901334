import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Compiled } from '#domain/schedule/compile.ts';
import { headsAndTails } from '#domain/schedule/headsAndTails.ts';
import { apart } from '#domain/schedule/improve/crowds/apart.ts';
import { CrowdBound } from '#domain/schedule/improve/crowds/crowdBound.ts';
import { Heaviest } from '#domain/schedule/improve/crowds/heaviest.ts';
import { lowerBound } from '#domain/schedule/lowerBound.ts';
import type { Work } from '#domain/tasks/work.ts';
import { compilationOf } from '#tests/support/compilationOf.ts';
import { exactOpening } from '#tests/support/exactOpening.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';
import { tightWork } from '#tests/support/tightWork.ts';

/** The bound when it has nothing more to gain. */
function boundOf(work: Work): CrowdBound {
  const compiled = compilationOf(work).compiled;
  const times = headsAndTails(compiled);
  const shut = apart(compiled, times, Number.POSITIVE_INFINITY);
  const bound = new CrowdBound(compiled, times, new Heaviest(compiled, shut), lowerBound(compiled));
  while (!bound.isDone) bound.run(100);
  return bound;
}

/** The heaviest crowd by trying every set of ways. */
function byTrial(compiled: Compiled, shut: Uint8Array, weight: Float64Array): number {
  const { count, wayHead, useHead, useOf, useAmount, capacity } = compiled;
  let best = 0;
  const left = capacity.slice();
  const chosen: number[] = [];
  const from = (task: number, sum: number): void => {
    best = Math.max(best, sum);
    if (task === count) return;
    from(task + 1, sum);
    if (chosen.some((other) => shut[task * count + other] === 1)) return;
    for (let w = wayHead[task]!; w < wayHead[task + 1]!; w += 1) {
      const uses = Array.from(
        { length: useHead[w + 1]! - useHead[w]! },
        (_, at) => useHead[w]! + at,
      );
      if (uses.some((use) => useAmount[use]! > left[useOf[use]!]!)) continue;
      for (const use of uses) left[useOf[use]!]! -= useAmount[use]!;
      chosen.push(task);
      from(task + 1, sum + weight[w]!);
      chosen.pop();
      for (const use of uses) left[useOf[use]!]! += useAmount[use]!;
    }
  };
  from(0, 0);
  return best;
}

describe('The heaviest crowd', () => {
  it('is the one that trying every set of tasks and ways finds', () => {
    const options = { tasks: 9, crews: 3, zones: 2, joint: true, keepOff: true };
    fc.assert(
      fc.property(
        fc.integer(),
        fc.array(fc.nat(9), { minLength: 90, maxLength: 90 }),
        (seed, draw) => {
          const compiled = compilationOf(randomWork(seed, options)).compiled;
          const shut = apart(compiled, headsAndTails(compiled), Number.POSITIVE_INFINITY);
          const weight = Float64Array.from(compiled.seconds, (_, w) => draw[w % draw.length]!);
          const found = new Heaviest(compiled, shut).find(weight, 1e9);
          expect(found.heaviest).toBe(true);
          expect(found.weight).toBeCloseTo(byTrial(compiled, shut, weight), 9);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('The bound by crowds', () => {
  // Worked out by hand.
  it('knows that two tasks of three people cannot share a crew of five', () => {
    const rows = ['A', 'B', 'C', 'D'].map((id) => ({ id, minutes: 10, people: 3 }));
    const work = smallWork(rows, { crews: [{ id: 'left', people: 5 }] });
    expect(lowerBound(compilationOf(work).compiled)).toBe(24 * 60);
    expect(boundOf(work).lower).toBe(40 * 60);
  });

  it('knows that a joint task keeps both its crews from all others', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 10, people: 4, crews: ['left'] },
        { id: 'B', minutes: 10, people: 4, crews: ['right'] },
        { id: 'C', minutes: 10, people: 4, crews: ['left', 'right'], joint: true },
      ],
      {
        crews: [
          { id: 'left', people: 4 },
          { id: 'right', people: 4 },
        ],
      },
    );
    expect(boundOf(work).lower).toBe(20 * 60);
  });

  it('is never above what an exact model proves', () => {
    for (let seed = 1; seed <= 16; seed += 1) {
      const work = tightWork(seed);
      expect(boundOf(work).lower / 60).toBeLessThanOrEqual(exactOpening(work) + 1e-9);
    }
  });

  it('never falls when a task takes longer', () => {
    fc.assert(
      fc.property(fc.integer(), fc.nat(), fc.integer({ min: 1, max: 20 }), (seed, pick, more) => {
        const work = randomWork(seed, {
          tasks: 12,
          crews: 3,
          zones: 1,
          joint: true,
          keepOff: true,
        });
        const slower = structuredClone(work);
        const { minutes } = slower.tasks[pick % slower.tasks.length]!;
        minutes.quick += more;
        minutes.likely += more;
        minutes.slow += more;
        expect(lowerBound(compilationOf(slower).compiled)).toBeGreaterThanOrEqual(
          lowerBound(compilationOf(work).compiled),
        );
        // To the second: what is reckoned in floating point is claimed to just below.
        expect(boundOf(slower).lower).toBeGreaterThanOrEqual(boundOf(work).lower - 1);
      }),
      { numRuns: 40 },
    );
  });
});
