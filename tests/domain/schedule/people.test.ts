import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { makePlan, type PlanOptions } from '#domain/schedule/makePlan.ts';
import { countsBetween, spread } from '#domain/schedule/peopleCounts.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { bruteForce } from '#tests/support/bruteForce.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { type Small, smallWork } from '#tests/support/smallWork.ts';

function planOf(work: Work, more: Partial<PlanOptions> = {}): Plan {
  const plan = makePlan(work, { shape: 'pert', crews: true, ...more });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  expect(checkPlan(work, plan.value, { crews: true, past: more.past })).toEqual([]);
  return plan.value;
}

function peopleOf(plan: Plan, id: string): number[] {
  return plan.tasks.find(({ task }) => task === id)!.crews.map(({ people }) => people);
}

const crew8 = { crews: [{ id: 'left', people: 8 }] };

describe('Counts of people worth having', () => {
  const need = (least: number, usual: number, most: number) => ({
    anyOf: [],
    people: { least, usual, most },
  });

  it('are all between least and most for one crew, the quickest first', () => {
    expect(countsBetween([need(4, 6, 8)], [8], 20)).toEqual([[8], [7], [6], [5], [4]]);
    expect(countsBetween([need(4, 6, 8)], [7], 6)).toEqual([[6], [5], [4]]);
  });

  it('are spread where there are too many, and what lies between is known', () => {
    const counts = [[9], [8], [7], [6], [5], [4], [3]];
    expect(spread(counts, 7)).toEqual({ some: expect.arrayContaining(counts), gaps: [] });
    expect(spread(counts, 3)).toEqual({
      some: [[9], [3], [6]],
      gaps: [
        { quickest: [8], fewest: [7] },
        { quickest: [5], fewest: [4] },
      ],
    });
    expect(spread(counts, 0)).toEqual({ some: [], gaps: [{ quickest: [9], fewest: [3] }] });
    expect(spread([], 3)).toEqual({ some: [], gaps: [] });
  });

  it('are, for crews that work together, no more of each than set the pace', () => {
    const counts = countsBetween([need(2, 4, 4), need(1, 2, 3)], [4, 3], 20);
    // 4 and 2 are the usual; 3 of the first set a pace that 2 of the second keep; 2 and 1 take twice as long.
    expect(counts).toEqual([
      [4, 2],
      [3, 2],
      [2, 1],
    ]);
  });

  it('leave out a need for nobody', () => {
    expect(countsBetween([need(0, 0, 0), need(1, 1, 2)], [0, 2], 20)).toEqual([
      [0, 2],
      [0, 1],
    ]);
  });
});

describe('People between least and most', () => {
  it('share a crew so that two jobs open as early as any order and any people can', () => {
    const rows = ['A', 'B'].map((id): Small => ({ id, minutes: 12, people: [4, 6, 8] }));
    const work = smallWork(rows, crew8);
    const plan = planOf(work);
    // 144 person-minutes for 8 people.
    expect(plan.minutesToOpen).toBe(18);
    expect(bruteForce(work)).toBe(18);
    expect(plan.lowerBound).toBe(18);
  });

  it('are the most where one task alone sets the opening', () => {
    const plan = planOf(smallWork([{ id: 'A', minutes: 12, people: [4, 6, 8] }], crew8));
    expect(peopleOf(plan, 'A')).toEqual([8]);
    expect(plan).toMatchObject({ minutesToOpen: 9, lowerBound: 9 });
  });

  it('are fewer where the work then goes on beside other work', () => {
    const rows: Small[] = [
      { id: 'long', minutes: 20, people: 4 },
      { id: 'short', minutes: 10, people: [3, 6, 6] },
    ];
    const plan = planOf(smallWork(rows, crew8));
    // 6 of 8 do not fit beside 4: one after the other would take 30 minutes.
    expect(peopleOf(plan, 'short')).toEqual([4]);
    expect(plan.minutesToOpen).toBe(20);
  });

  it('are the usual ones where others gain nothing', () => {
    const rows: Small[] = [
      { id: 'long', minutes: 30, people: 4, crews: ['left'] },
      { id: 'short', minutes: 10, people: [2, 3, 6], crews: ['right'] },
      { id: 'first', minutes: 15, people: [1, 3, 4], crews: ['right'], after: ['short'] },
    ];
    const work = smallWork(rows, {
      crews: [
        { id: 'left', people: 4 },
        { id: 'right', people: 3 },
      ],
    });
    for (const seed of [1, 2, 3]) {
      const plan = planOf(work, { seed });
      expect(peopleOf(plan, 'short')).toEqual([3]);
      expect(peopleOf(plan, 'first')).toEqual([3]);
      expect(plan.minutesToOpen).toBe(30);
    }
  });

  it('never outnumber the room of a zone', () => {
    const work = smallWork([{ id: 'A', minutes: 12, people: [4, 6, 8], zones: ['deck'] }], {
      ...crew8,
      zones: [{ id: 'deck', room: 7 }],
    });
    expect(peopleOf(planOf(work), 'A')).toEqual([7]);
  });

  it('who are at work already stay as they are', () => {
    const rows: Small[] = [
      { id: 'A', minutes: 12, people: [4, 6, 8] },
      { id: 'B', minutes: 12, people: [4, 6, 8], after: ['A'] },
    ];
    const crews = [{ crew: 'left', people: 5 }];
    const past = { now: 3, tasks: [{ task: 'A', status: 'at-work' as const, start: 0, crews }] };
    const plan = planOf(smallWork(rows, crew8), { past });
    expect(peopleOf(plan, 'A')).toEqual([5]);
    expect(peopleOf(plan, 'B')).toEqual([8]);
    expect(plan.minutesToOpen).toBeCloseTo(14.4 + 9, 6);
  });

  it('are so many that a fixed start leaves time for what comes after', () => {
    const rows: Small[] = [
      { id: 'A', minutes: 12, people: [2, 4, 8] },
      { id: 'B', minutes: 5, people: 8, after: ['A'], fixed: { start: 7 } },
    ];
    const plan = planOf(smallWork(rows, crew8));
    expect(peopleOf(plan, 'A')).toEqual([8]);
    expect(plan.minutesToOpen).toBe(12);
  });

  it('are planned and bounded also where there are more counts than are tried', () => {
    const rows = ['A', 'B'].map((id): Small => ({ id, minutes: 100, people: [1, 50, 500] }));
    const crews = Array.from({ length: 3 }, (_, at) => ({ id: `c${at}`, people: 200 }));
    // Each with all of a crew of its own.
    const plan = planOf(smallWork(rows, { crews }));
    expect(plan).toMatchObject({ minutesToOpen: 25, lowerBound: 25 });
    // One crew for both: 10,000 person-minutes for 201 people.
    const odd = planOf(smallWork(rows, { crews: [{ id: 'c', people: 201 }] }));
    expect(odd.minutesToOpen).toBeGreaterThanOrEqual(10_000 / 201 - 1 / 60);
    expect(odd.lowerBound).toBeLessThanOrEqual(odd.minutesToOpen);
    expect(odd.lowerBound).toBeGreaterThan(45);
  });

  it('with a skill are no more than have it', () => {
    const work = smallWork([{ id: 'A', minutes: 12, people: [2, 3, 6] }], {
      crews: [{ id: 'left', people: 8, skilled: [{ skill: 'weld', people: 4 }] }],
    });
    const needs = [{ ...work.tasks[0]!.needs[0]!, skill: 'weld' }];
    const welded = { ...work, tasks: work.tasks.map((task) => ({ ...task, needs })) };
    expect(peopleOf(planOf(welded), 'A')).toEqual([4]);
  });
});

/** Four tasks of two crews, alone or together, with a zone, links and people between least and most. */
function tinyWork(seed: number): Work {
  const random = xoroshiro128plus(seed);
  for (let drawn = 0; drawn < 20; drawn += 1) random.next();
  const draw = (least: number, most: number) => uniformInt(random, least, most);
  const rows = Array.from({ length: 4 }, (_, at): Small => {
    const usual = draw(1, 3);
    const joint = draw(0, 5) === 0;
    return {
      id: `t${at}`,
      minutes: draw(1, 12),
      people: [Math.max(1, usual - draw(0, 2)), usual, usual + draw(0, 2)],
      crews: joint ? ['a', 'b'] : [['a'], ['b'], []][draw(0, 2)]!,
      joint,
      after: at > 0 && draw(0, 2) === 0 ? [`t${draw(0, at - 1)}`] : [],
      zones: draw(0, 1) === 0 ? ['z'] : [],
      keepOff: draw(0, 5) === 0,
    };
  });
  return smallWork(rows, {
    crews: [
      { id: 'a', people: 3 },
      { id: 'b', people: 4 },
    ],
    zones: [{ id: 'z', room: draw(5, 6) }],
  });
}

describe('Tiny orders of work gone through in full, all orders, crews and people', () => {
  const seeds = Array.from({ length: 60 }, (_, at) => at + 1);
  const solved = seeds.map((seed) => {
    const work = tinyWork(seed);
    return { seed, plan: planOf(work), best: bruteForce(work) };
  });

  it('are never beaten, and no bound lies above the best', () => {
    for (const { seed, plan, best } of solved) {
      expect(plan.minutesToOpen, `seed ${seed}`).toBeGreaterThanOrEqual(best - 1e-9);
      expect(plan.lowerBound, `seed ${seed}`).toBeLessThanOrEqual(best + 1e-9);
    }
  });

  it('are planned as early as that nearly always', () => {
    const met = solved.filter(({ plan, best }) => plan.minutesToOpen < best + 1e-9);
    expect(met.length).toBeGreaterThanOrEqual(0.95 * solved.length);
  });
});
