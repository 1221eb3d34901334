import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { plannedTask, planOf } from '#tests/support/planOf.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { type Small, smallWork } from '#tests/support/smallWork.ts';

const crews = [
  { id: 'left', people: 4 },
  { id: 'right', people: 4 },
];
const left = { people: 4, crews: ['left'] };

function refusalOf(tasks: readonly Small[], rest: Parameters<typeof smallWork>[1] = {}) {
  const plan = makePlan(smallWork(tasks, { crews, ...rest }), { shape: 'pert', crews: true });
  if (plan.ok) throw new Error('This can be planned.');
  return plan.reason;
}

describe('A task that the leader has fixed', () => {
  it('starts just then, and others go around it', () => {
    const work = smallWork(
      [
        { id: 'push', minutes: 10, ...left, fixed: { start: 15 } },
        { id: 'A', minutes: 10, ...left },
        { id: 'B', minutes: 10, ...left },
      ],
      { crews },
    );
    const plan = planOf(work);
    // One of the others fits before it, the second after it: by hand 10, gap, 25, 35.
    expect(plannedTask(plan, 'push')).toMatchObject({ start: 15, finish: 25 });
    expect(plan.minutesToOpen).toBe(35);
    const { reason } = plannedTask(plan, 'push');
    expect(reason).toEqual({ kind: 'fixed' });
    expect(reasonSentence(work, reason)).toBe('starts when the leader has fixed it');
  });

  it('is done by the crew that is fixed, though another would be sooner', () => {
    const work = smallWork(
      [
        { id: 'long', minutes: 30, ...left },
        { id: 'A', minutes: 10, people: 4, fixed: { crews: ['left'] } },
      ],
      { crews },
    );
    const plan = planOf(work);
    expect(plannedTask(plan, 'A').crews).toEqual([{ crew: 'left', people: 4 }]);
    expect(plan.minutesToOpen).toBe(40);
  });

  it('keeps its people even from what opens, when it comes after the opening', () => {
    const plan = planOf(
      smallWork(
        [
          { id: 'opens', minutes: 20, ...left, opens: true },
          { id: 'after', minutes: 10, ...left, fixed: { start: 5 } },
        ],
        { crews },
      ),
    );
    expect(plan.minutesToOpen).toBe(35);
  });

  it('is refused by the name of what it comes after', () => {
    const refused = refusalOf([
      { id: 'A', minutes: 20, ...left },
      { id: 'B', minutes: 10, ...left, after: ['A'], fixed: { start: 15 } },
    ]);
    expect(refused).toEqual({
      code: 'fixed-blocked',
      of: ['B', 'A'],
      sentence:
        'Task B is fixed to start at minute 15, and Task A lets it start at minute 20. Fix it otherwise, or free it.',
    });
  });

  it('is refused when its stores come later', () => {
    const loads = [{ id: 'truck', name: 'Truck', arrives: 20 }];
    const task = { id: 'A', minutes: 20, ...left, loads: ['truck'], fixed: { start: 15 } };
    expect(refusalOf([task], { loads })).toMatchObject({ code: 'fixed-blocked', of: ['A'] });
  });

  it('is refused when it would run into a rest that it cannot pause over', () => {
    const resting = [{ ...crews[0]!, rests: [{ from: 20, to: 30 }] }];
    const task = { id: 'A', minutes: 20, ...left, keepOff: true, fixed: { start: 15 } };
    expect(refusalOf([{ ...task, zones: ['z'] }], { crews: resting }).sentence).toBe(
      'Task A is fixed to start at minute 15, and it would run into a rest of its crew or into the dark. Fix it otherwise, or free it.',
    );
  });

  it('is refused when its crew cannot do it', () => {
    const task = { id: 'A', minutes: 20, ...left, fixed: { crews: ['right'] } };
    expect(refusalOf([task])).toEqual({
      code: 'fixed-blocked',
      of: ['A'],
      sentence:
        'Task A has its crews fixed, and right cannot take part in it. Fix it otherwise, or free it.',
    });
  });

  it('is refused with another that is fixed for the same people', () => {
    const refused = refusalOf([
      { id: 'A', minutes: 20, ...left, fixed: { start: 0 } },
      { id: 'B', minutes: 10, ...left, fixed: { start: 15 } },
    ]);
    expect(refused).toMatchObject({ code: 'fixed-blocked', of: ['A', 'B'] });
  });

  it('counts no more as fixed when its time has gone by', () => {
    const work = smallWork([{ id: 'A', minutes: 20, ...left, fixed: { start: 15 } }], { crews });
    expect(planOf(work, { past: { now: 16, tasks: [] } }).minutesToOpen).toBe(36);
    expect(planOf(work, { past: { now: 15, tasks: [] } }).minutesToOpen).toBe(35);
  });

  it('stays where a plan had it while the rest is planned anew', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.nat(), fc.nat(), (seed, one, other) => {
        const work = randomWork(seed, {
          tasks: 15,
          crews: 3,
          zones: 2,
          joint: true,
          keepOff: true,
          rests: true,
          equipment: true,
        });
        const options = { shape: 'pert', crews: true, effort: 40 } as const;
        const first = makePlan(work, options);
        if (!first.ok) throw new Error(first.reason.sentence);
        const picked = new Set([one, other].map((pick) => `t${pick % 15}`));
        const tasks = work.tasks.map((task) => {
          const own = plannedTask(first.value, task.id);
          const taken = own.crews.map(({ crew }) => crew);
          const crewsFixed = taken.length > 0 ? { crews: taken } : {};
          return picked.has(task.id)
            ? { ...task, fixed: { start: own.start, ...crewsFixed } }
            : task;
        });
        const again = makePlan({ ...work, tasks }, options);
        if (again.ok) expect(checkPlan({ ...work, tasks }, again.value, options)).toEqual([]);
        else expect(again.reason.code).toBe('fixed-blocked');
      }),
      { numRuns: 150 },
    );
  });
});
