import { describe, expect, it } from 'vitest';
import { compile } from '#domain/schedule/compile.ts';
import { placeForward } from '#domain/schedule/forward.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { manningOf } from '#domain/schedule/manning.ts';
import { Profile } from '#domain/schedule/profile.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import { emptySchedule, openingOf } from '#domain/schedule/schedule.ts';
import type { Work, Zone } from '#domain/tasks/work.ts';
import { checkCrossing } from '#tests/support/checkCrossing.ts';
import { plannedTask, planOf } from '#tests/support/planOf.ts';
import { type Small, smallWork } from '#tests/support/smallWork.ts';

const banks: Zone[] = [
  { id: 'home', name: 'Home', bank: 'near' },
  { id: 'landing', name: 'Landing', bank: 'far' },
  { id: 'bridge', name: 'Bridge', bank: 'over' },
];

/** Tasks of 10 minutes for four of one crew, with 6 minutes between the banks. */
function gap(tasks: readonly Omit<Small, 'minutes'>[], people = 4, crossing = 6): Work {
  const rows = tasks.map((task) => ({ minutes: 10, people: 4, ...task }));
  const work = smallWork(rows, { crews: [{ id: 'left', people }], zones: banks });
  return { ...work, crossing };
}

/** Minutes to open when the tasks are placed in this order. */
function openingIn(work: Work, order: readonly number[]): number {
  const manning = manningOf(work, 'pert', true);
  const compilation = compile(manning, { now: 0, tasks: new Map(), left: new Map() });
  if (!compilation.ok) throw new Error(compilation.reason.sentence);
  const { compiled } = compilation.value;
  const { count, capacity, users, busy } = compiled;
  const schedule = emptySchedule(compiled);
  const profile = new Profile(capacity, users, busy);
  const free = new Uint8Array(count);
  expect(placeForward(compiled, profile, Int32Array.from(order), count, free, schedule)).toBe(true);
  return openingOf(compiled, schedule) / 60;
}

describe('Crossing from bank to bank', () => {
  const there = { id: 'there', zones: ['landing'] };

  it('takes its minutes between tasks of the same people, and says so', () => {
    const work = gap([
      { id: 'here', zones: ['home'] },
      { ...there, after: ['here'] },
    ]);
    const plan = planOf(work);
    const { start, reason } = plannedTask(plan, 'there');
    expect(start).toBe(16);
    expect(plan.handOvers).toEqual([
      { from: 'here', to: 'there', kind: 'crew', of: 'left', people: 4, wait: 6 },
    ]);
    expect(reason).toEqual({ kind: 'crossing', task: 'here', of: 'left' });
    expect(reasonSentence(work, reason)).toBe('people of left cross over from here');
  });

  it('takes none on the same bank, nor to or from what is over the gap or on both banks', () => {
    for (const zones of [['home'], ['bridge'], ['home', 'landing'], []]) {
      const work = gap([
        { id: 'here', zones: ['home'] },
        { id: 'next', zones, after: ['here'] },
      ]);
      expect(planOf(work).minutesToOpen).toBe(20);
    }
  });

  it('is left to those who are there already, where there are enough', () => {
    const work = gap(
      [
        { id: 'here-1', zones: ['home'] },
        { id: 'there-1', zones: ['landing'] },
        { id: 'here-2', zones: ['home'], after: ['here-1'] },
        { id: 'there-2', zones: ['landing'], after: ['there-1'] },
      ],
      8,
    );
    expect(planOf(work).minutesToOpen).toBe(20);
  });

  it('is seen by every schedule: all on one bank and then all on the other opens sooner than by turns', () => {
    const work = gap([
      { id: 'here-1', zones: ['home'] },
      { id: 'there-1', zones: ['landing'] },
      { id: 'here-2', zones: ['home'] },
      { id: 'there-2', zones: ['landing'] },
    ]);
    // Four tasks of 10 minutes; one crossing of 6, or three.
    expect(openingIn(work, [0, 2, 1, 3])).toBe(46);
    expect(openingIn(work, [0, 1, 2, 3])).toBe(58);
  });

  it('counts for those of another crew no more than for a plan without crews', () => {
    const work = gap([{ id: 'here', zones: ['home'] }, there]);
    const two = { ...work, crews: [...work.crews, { ...work.crews[0]!, id: 'right' }] };
    expect(planOf(two).minutesToOpen).toBe(10);
    expect(planOf(work, { crews: false }).minutesToOpen).toBe(10);
  });

  it('is taken in when a crew shrinks meanwhile', () => {
    const work = gap(
      [
        { id: 'here', zones: ['home'] },
        { id: 'there', zones: ['landing'], after: ['here'] },
      ],
      5,
    );
    const crews = [{ ...work.crews[0]!, strength: [{ from: 25, people: 4 }] }];
    expect(planOf({ ...work, crews }).minutesToOpen).toBe(26);
  });

  it('refuses a fixed start that leaves no time for it', () => {
    const work = gap([
      { id: 'here', zones: ['home'], fixed: { start: 0 } },
      { ...there, fixed: { start: 12 } },
    ]);
    const plan = makePlan(work, { shape: 'pert', crews: true });
    expect(!plan.ok && plan.reason.code).toBe('fixed-blocked');
  });

  it('is missed by the checker in no plan that lets people be on both banks at once', () => {
    const work = gap([
      { id: 'here', zones: ['home'] },
      { ...there, after: ['here'] },
    ]);
    const plan = planOf({ ...work, crossing: 0 });
    expect(checkCrossing(work, plan)).toEqual(['left has 4 and takes 8 with those who cross']);
  });
});
