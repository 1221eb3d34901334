import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalPath } from '#domain/schedule/criticalPath.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { oneStronger } from '#domain/schedule/strength.ts';
import type { Work } from '#domain/tasks/work.ts';
import { checkCrossing } from '#tests/support/checkCrossing.ts';
import { checkLimits } from '#tests/support/checkLimits.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { type RandomWorkOptions, randomPast, randomWork } from '#tests/support/randomWork.ts';
import { replay } from '#tests/support/replay.ts';

/** Orders of work of every kind: any mix of what a plan must keep to. */
const anyWork = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e9 }),
    tasks: fc.integer({ min: 1, max: 35 }),
    crews: fc.integer({ min: 1, max: 5 }),
    zones: fc.integer({ min: 0, max: 4 }),
    waits: fc.boolean(),
    joint: fc.boolean(),
    keepOff: fc.boolean(),
    hours: fc.boolean(),
    loads: fc.boolean(),
    holds: fc.boolean(),
    opens: fc.boolean(),
    skills: fc.boolean(),
    equipment: fc.boolean(),
    skilled: fc.boolean(),
    crossing: fc.boolean(),
    strength: fc.boolean(),
    rests: fc.boolean(),
    dark: fc.boolean(),
  })
  .map(({ seed, ...options }: { seed: number } & RandomWorkOptions) => randomWork(seed, options));

function planned(work: Work, crews: boolean, past?: Past): Plan {
  const plan = makePlan(work, { shape: 'pert', crews, past, effort: 40 });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  return plan.value;
}

/** Orders of work whose crews stay as strong as they are: late people of a crew that shrinks are then no matter. */
const steadyWork = anyWork.map((work) => ({
  ...work,
  crews: work.crews.map(({ strength: _, lent: __, rests, ...crew }) => ({
    ...crew,
    ...(rests && { rests: rests.map(({ from, to }) => ({ from, to })) }),
  })),
}));

describe('Any plan', () => {
  it('keeps to every rule, as the independent checker knows them, with and without crews', () => {
    fc.assert(
      fc.property(anyWork, fc.boolean(), (work, crews) => {
        expect(checkPlan(work, planned(work, crews), { crews })).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps to them from any moment of any past on', () => {
    fc.assert(
      fc.property(
        anyWork,
        fc.integer(),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (work, seed, share) => {
          const first = planned(work, true);
          const past = randomPast(seed, first, Math.round(share * first.minutesToOpen));
          expect(checkPlan(work, planned(work, true, past), { crews: true, past })).toEqual([]);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('stays valid when a crew gets one more person for the whole build', () => {
    fc.assert(
      fc.property(anyWork, fc.nat(), (work, pick) => {
        const plan = planned(work, true);
        const crews = work.crews.map((crew, at) =>
          at === pick % work.crews.length ? oneStronger(crew) : crew,
        );
        expect(checkPlan({ ...work, crews }, plan, { crews: true })).toEqual([]);
      }),
    );
  });

  it('keeps to the hours of a crew that goes, or is refused for them', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e9 }),
        fc.integer({ min: 20, max: 200 }),
        (seed, lastCrewUntil) => {
          const work = randomWork(seed, {
            tasks: 15,
            crews: 3,
            zones: 1,
            joint: true,
            lastCrewUntil,
          });
          const plan = makePlan(work, { shape: 'pert', crews: true, effort: 40 });
          if (plan.ok) expect(checkPlan(work, plan.value, { crews: true })).toEqual([]);
          else expect(plan.reason.code).toBe('window-too-short');
        },
      ),
    );
  });

  it('is the same again for the same input', () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        expect(planned(structuredClone(work), true)).toEqual(planned(work, true));
      }),
      { numRuns: 40 },
    );
  });

  it('is as long as the critical path where nothing but links makes anybody wait', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 1, max: 40 }), (seed, tasks) => {
        const work = randomWork(seed, { tasks, waits: true });
        const path = criticalPath(work, 'pert');
        const plan = planned(work, false);
        expect(path.ok && path.value.minutes).toBe(plan.minutesToOpen);
        expect(plan.lowerBound).toBe(plan.minutesToOpen);
        expect(plan.handOvers).toEqual([]);
      }),
    );
  });
});

describe('Earliest starts over links, hand-overs and releases', () => {
  it('are the plan itself with the planned minutes', () => {
    fc.assert(
      fc.property(anyWork, fc.boolean(), (work, crews) => {
        const plan = planned(work, crews);
        const again = replay(work, plan, () => 1);
        for (const own of plan.tasks) {
          expect(again.get(own.task)?.start).toBeCloseTo(own.start, 6);
          expect(again.get(own.task)?.finish).toBeCloseTo(own.finish, 6);
        }
      }),
    );
  });

  it('keep every limit of people and room whatever the minutes turn out to be', () => {
    const factors = fc.array(fc.double({ min: 0.05, max: 6, noNaN: true }), {
      minLength: 35,
      maxLength: 35,
    });
    fc.assert(
      fc.property(steadyWork, fc.boolean(), factors, (work, crews, factor) => {
        const plan = planned(work, crews);
        const times = replay(work, plan, (at) => factor[at]!);
        const drawn = {
          ...plan,
          tasks: plan.tasks.map((own) => ({ ...own, ...times.get(own.task)! })),
        };
        expect(checkLimits(work, drawn, { crews })).toEqual([]);
        if (crews) expect(checkCrossing(work, drawn)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('keep them from now on too, with people still at work', () => {
    const factors = fc.array(fc.double({ min: 1, max: 6, noNaN: true }), {
      minLength: 35,
      maxLength: 35,
    });
    fc.assert(
      fc.property(steadyWork, fc.integer(), factors, (work, seed, factor) => {
        const first = planned(work, true);
        const past = randomPast(seed, first, first.minutesToOpen / 2);
        const plan = planned(work, true, past);
        const times = replay(work, plan, (at) => factor[at]!, past);
        const drawn = {
          ...plan,
          tasks: plan.tasks.map((own) => ({ ...own, ...times.get(own.task)! })),
        };
        expect(checkLimits(work, drawn, { crews: true, past })).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('never open earlier when a task takes longer', () => {
    fc.assert(
      fc.property(
        anyWork,
        fc.nat(),
        fc.double({ min: 1, max: 9, noNaN: true }),
        (work, pick, factor) => {
          const plan = planned(work, true);
          const slow = pick % work.tasks.length;
          const times = replay(work, plan, (at) => (at === slow ? factor : 1));
          for (const own of plan.tasks) {
            expect(times.get(own.task)!.finish).toBeGreaterThanOrEqual(own.finish - 1e-6);
          }
        },
      ),
    );
  });

  it('name no hand-over twice, and none that a link says anyway', () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        const { handOvers } = planned(work, true);
        const keys = handOvers.map(
          ({ from, to, kind, of, skill }) => `${from} ${to} ${kind} ${of} ${skill}`,
        );
        expect(new Set(keys).size).toBe(keys.length);
        for (const { from, to, people, wait } of handOvers) {
          expect(people).toBeGreaterThan(0);
          // A link does not say that people cross.
          if (wait) continue;
          const said = work.links.some(
            (link) =>
              link.from === from && link.to === to && link.counts === 'finish' && link.wait >= 0,
          );
          expect(said).toBe(false);
        }
      }),
    );
  });
});
