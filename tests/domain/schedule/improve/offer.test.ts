import { describe, expect, it } from 'vitest';
import {
  isWorthOffering,
  type Offer,
  offerOf,
  offerSentence,
} from '#domain/schedule/improve/offer.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { smallWork } from '#tests/support/smallWork.ts';

function planOf(work: Work, past?: Past): Plan {
  const plan = makePlan(work, { shape: 'pert', crews: true, past });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  return plan.value;
}

const crews = [
  { id: 'left', people: 4 },
  { id: 'right', people: 4 },
];

/** Two crews, two tasks each: A and B by the left, C and D by the right. */
const apart = smallWork(
  [
    { id: 'A', minutes: 10, people: 4, crews: ['left'] },
    { id: 'B', minutes: 20, people: 4, crews: ['left'], after: ['A'] },
    { id: 'C', minutes: 10, people: 4, crews: ['right'] },
    { id: 'D', minutes: 5, people: 4, crews: ['right'], after: ['C'] },
  ],
  { crews },
);

describe('An offer', () => {
  it('gains nothing and changes nothing when the plan is the same', () => {
    const plan = planOf(apart);
    const offer = offerOf(apart, plan, plan, 0);
    expect(offer).toEqual({ gain: 0, changedOrders: 0, crews: [], needed: false });
    expect(isWorthOffering(offer)).toBe(false);
  });

  it('counts a task that goes to another crew once, and names both crews', () => {
    const both = structuredClone(apart);
    both.tasks[1]!.needs[0]!.anyOf = ['left', 'right'];
    const fresh = planOf(apart);
    const moved: Plan = {
      ...fresh,
      tasks: fresh.tasks.map((own) =>
        own.task === 'B' ? { ...own, crews: [{ crew: 'right', people: 4 }] } : own,
      ),
    };
    expect(offerOf(both, fresh, moved, 0)).toMatchObject({
      changedOrders: 1,
      crews: ['left', 'right'],
    });
  });

  it('counts the fewest orders that change place in what a crew does', () => {
    const work = smallWork(
      ['A', 'B', 'C', 'D'].map((id) => ({ id, minutes: 10, people: 4, crews: ['left'] })),
      { crews },
    );
    const plan = planOf(work);
    const first = plan.tasks[0]!;
    // The first goes last: one order changed, not four.
    const turned: Plan = {
      ...plan,
      tasks: [
        ...plan.tasks.slice(1).map((own) => ({ ...own, start: own.start - 10 })),
        { ...first, start: 30, finish: 40 },
      ],
    };
    expect(offerOf(work, plan, turned, 0)).toMatchObject({ changedOrders: 1, crews: ['left'] });
  });

  it('measures the accepted plan from now on, not by times long past', () => {
    const plan = planOf(apart);
    // A has taken 25 minutes instead of 10, and C is done: the accepted plan now opens at 45.
    const past: Past = {
      now: 25,
      tasks: [
        { task: 'A', status: 'done', start: 0, finish: 25, crews: [{ crew: 'left', people: 4 }] },
        { task: 'C', status: 'done', start: 0, finish: 10, crews: [{ crew: 'right', people: 4 }] },
      ],
    };
    const fresh = planOf(apart, past);
    expect(fresh.minutesToOpen).toBe(45);
    expect(offerOf(apart, plan, fresh, 25)).toMatchObject({ gain: 0, changedOrders: 0 });
  });

  it('is needed when the accepted plan lacks a task or a crew lacks its people', () => {
    const plan = planOf(apart);
    const more = structuredClone(apart);
    more.tasks.push({ ...more.tasks[0]!, id: 'E', number: 5 });
    expect(isWorthOffering(offerOf(more, plan, planOf(more), 0))).toBe(true);
    const fewer = structuredClone(apart);
    fewer.tasks.forEach((task) => {
      task.needs[0]!.people.least = 2;
    });
    fewer.crews[0]!.people = 3;
    expect(offerOf(fewer, plan, planOf(fewer), 0)).toMatchObject({ gain: 0, needed: true });
  });
});

describe('Whether an offer is worth making', () => {
  const offer = (gain: number, changedOrders: number): Offer => ({
    gain,
    changedOrders,
    crews: ['left', 'right'],
    needed: false,
  });

  it('weighs minutes against orders: two minutes do not move many people, fourteen move five orders', () => {
    expect(isWorthOffering(offer(2, 8))).toBe(false);
    expect(isWorthOffering(offer(2, 1))).toBe(true);
    expect(isWorthOffering(offer(14, 5))).toBe(true);
    expect(isWorthOffering(offer(-3, 0))).toBe(false);
    expect(isWorthOffering(offer(0, 0))).toBe(false);
  });

  it('lets an hour move everybody', () => {
    expect(isWorthOffering(offer(60, 150))).toBe(true);
  });

  it('says what is gained and what it takes', () => {
    expect(offerSentence(offer(14, 5))).toBe('opens 14 min earlier; changes 5 orders for 2 crews');
    expect(offerSentence({ ...offer(0.2, 1), crews: ['left'] })).toBe(
      'opens at the same time; changes 1 order for 1 crew',
    );
    expect(offerSentence({ ...offer(0, 0), needed: true })).toBe(
      'the accepted plan cannot be kept to; changes no orders',
    );
  });
});
