import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Compiled, compile } from '#domain/schedule/compile.ts';
import { Raising } from '#domain/schedule/improve/raising.ts';
import { lowerBound } from '#domain/schedule/lowerBound.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { manningOf } from '#domain/schedule/manning.ts';
import { settlePast } from '#domain/schedule/settled.ts';
import type { Work } from '#domain/tasks/work.ts';
import { randomPast, randomWork } from '#tests/support/randomWork.ts';

/** What bounds of plans from some moment on go by; null for work that cannot be manned. */
function compiledOf(work: Work, past?: ReturnType<typeof randomPast>): Compiled | null {
  const manning = manningOf(work, 'pert', true);
  const settled = settlePast(manning, past);
  if (!settled.ok) throw new Error(settled.reason.sentence);
  const compilation = compile(manning, settled.value);
  return compilation.ok ? compilation.value.forBounds : null;
}

/** The bound with nothing left to gain, in minutes, for plans that open at `opening` or before. */
function boundOf(work: Work, opening: number, past?: ReturnType<typeof randomPast>): number {
  const forBounds = compiledOf(work, past);
  if (!forBounds) throw new Error('cannot be manned');
  const best = Math.round(opening * 60) + 1;
  const raising = new Raising(forBounds, lowerBound(forBounds), best, null, 1);
  while (!raising.isDone) raising.run(200, () => false);
  return raising.lower / 60;
}

const anyWork = fc.integer({ min: 1, max: 1e9 }).map((seed) =>
  randomWork(seed, {
    tasks: 4 + (seed % 12),
    crews: 3,
    zones: 2,
    joint: true,
    keepOff: seed % 2 === 0,
    waits: seed % 3 === 0,
    loads: seed % 5 === 0,
    opens: seed % 7 === 0,
    equipment: seed % 11 < 5,
    rests: seed % 13 < 5,
    dark: seed % 17 < 5,
    crossing: seed % 19 < 9,
    strength: seed % 23 < 9,
    skilled: seed % 29 < 9,
  }),
);

it('No plan opens before the bound, whatever there is in the order of work', () => {
  fc.assert(
    fc.property(anyWork, (work) => {
      const plan = makePlan(work, { shape: 'pert', crews: true, effort: 200 });
      if (!plan.ok) return;
      const { minutesToOpen } = plan.value;
      expect(boundOf(work, minutesToOpen)).toBeLessThanOrEqual(minutesToOpen + 1e-9);
    }),
    { numRuns: 200 },
  );
});

it('No plan opens before the bound in the middle of a build', () => {
  fc.assert(
    fc.property(anyWork, fc.integer(), (work, seed) => {
      const first = makePlan(work, { shape: 'pert', crews: true, effort: 20 });
      if (!first.ok) return;
      const past = randomPast(seed, first.value, Math.round(first.value.minutesToOpen / 2));
      const plan = makePlan(work, { shape: 'pert', crews: true, past, effort: 200 });
      if (!plan.ok) return;
      const { minutesToOpen } = plan.value;
      expect(boundOf(work, minutesToOpen, past)).toBeLessThanOrEqual(minutesToOpen + 1e-9);
    }),
    { numRuns: 100 },
  );
});

it('Longer minutes of a task never lower the bound by paths and people', () => {
  fc.assert(
    fc.property(
      anyWork,
      fc.nat(),
      fc.double({ min: 1, max: 4, noNaN: true }),
      (work, pick, factor) => {
        const slow = work.tasks[pick % work.tasks.length]!;
        const { quick, likely, slow: most } = slow.minutes;
        const longer = { quick: quick * factor, likely: likely * factor, slow: most * factor };
        const tasks = work.tasks.map((task) =>
          task === slow ? { ...task, minutes: longer } : task,
        );
        const [before, after] = [compiledOf(work), compiledOf({ ...work, tasks })];
        if (before && after) expect(lowerBound(after)).toBeGreaterThanOrEqual(lowerBound(before));
      },
    ),
    { numRuns: 300 },
  );
});
