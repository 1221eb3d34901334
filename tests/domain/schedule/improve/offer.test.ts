import { describe, expect, it } from 'vitest';
import {
  isWorthOffering,
  minuteShown,
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

const none: Past = { now: 0, tasks: [] };

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
    const offer = offerOf({ work: apart, plan }, { work: apart, plan }, none);
    // A and B one after the other take 30 minutes.
    expect(offer).toEqual({
      gain: 0,
      opens: 30,
      acceptedOpens: 30,
      changedOrders: 0,
      crews: [],
      needed: false,
    });
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
    expect(offerOf({ work: both, plan: moved }, { work: both, plan: fresh }, none)).toMatchObject({
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
    expect(offerOf({ work, plan: turned }, { work, plan }, none)).toMatchObject({
      changedOrders: 1,
      crews: ['left'],
    });
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
    expect(offerOf({ work: apart, plan: fresh }, { work: apart, plan }, past)).toMatchObject({
      gain: 0,
      changedOrders: 0,
    });
  });

  it('gains what a truck told late costs the accepted plan and not the new one', () => {
    // One crew. The panels' truck comes first and the pegs' after 20 minutes: panels, then pegs.
    const loads = ['panels', 'pegs'].map((id, at) => ({ id, name: id, arrives: 20 * at }));
    const work = smallWork(
      [
        { id: 'panels', minutes: 20, people: 4, crews: ['left'], loads: ['panels'] },
        { id: 'pegs', minutes: 30, people: 4, crews: ['left'], loads: ['pegs'] },
        { id: 'open', minutes: 5, people: 4, crews: ['left'], after: ['panels', 'pegs'] },
      ],
      { crews, loads },
    );
    const accepted = planOf(work);
    const offerWith = (arrives: number) => {
      const told = { ...work, loads: [{ ...loads[0]!, arrives }, loads[1]!] };
      const fresh = planOf(told);
      return offerOf({ work: told, plan: fresh }, { work: told, plan: accepted }, none);
    };
    // By hand: 20 + 30 + 5 while the truck is on time.
    expect(offerWith(0)).toMatchObject({ gain: 0, opens: 55, acceptedOpens: 55 });
    // 40 minutes late it holds the accepted plan to 40 + 20 + 30 + 5; the new one has the pegs first: 20 + 30 + 20 + 5.
    const late = offerWith(40);
    expect(late).toMatchObject({ gain: 20, opens: 75, acceptedOpens: 95, needed: false });
    expect(isWorthOffering(late)).toBe(true);
    expect(offerSentence(late)).toMatch(/^opens 20 min earlier; changes 1 order for 1 crew$/);
  });

  it('moves nobody for a late truck that holds either plan alike', () => {
    const both = structuredClone(apart);
    both.loads = [{ id: 'truck', name: 'Truck', arrives: 0 }];
    both.tasks[0]!.loads = ['truck'];
    both.tasks[1]!.needs[0]!.anyOf = ['left', 'right'];
    const accepted = planOf(both);
    both.loads[0]!.arrives = 60;
    const fresh = planOf(both);
    // The same orders with B given to the others: 60 + 10 + 20 whoever does it.
    const moved: Plan = {
      ...fresh,
      tasks: fresh.tasks.map((own) =>
        own.task === 'B' ? { ...own, crews: [{ crew: 'right', people: 4 }] } : own,
      ),
    };
    const offer = offerOf({ work: both, plan: moved }, { work: both, plan: accepted }, none);
    expect(offer).toMatchObject({ gain: 0, opens: 90, acceptedOpens: 90 });
    expect(isWorthOffering(offer)).toBe(false);
  });

  it('loses to moving nobody when work past its slow estimate holds both plans', () => {
    const plan = planOf(apart);
    // A is past everything it was thought to take: both plans give it a minute more, then B its 20.
    const past: Past = {
      now: 40,
      tasks: [
        { task: 'A', status: 'at-work', start: 0, crews: [{ crew: 'left', people: 4 }] },
        { task: 'C', status: 'done', start: 0, finish: 10, crews: [{ crew: 'right', people: 4 }] },
      ],
    };
    const fresh = planOf(apart, past);
    expect(offerOf({ work: apart, plan: fresh }, { work: apart, plan }, past)).toMatchObject({
      gain: 0,
      opens: 61,
      acceptedOpens: 61,
    });
  });

  it('is needed when the accepted plan lacks a task or a crew lacks its people', () => {
    const plan = planOf(apart);
    const more = structuredClone(apart);
    more.tasks.push({ ...more.tasks[0]!, id: 'E', number: 5 });
    expect(
      isWorthOffering(offerOf({ work: more, plan: planOf(more) }, { work: more, plan }, none)),
    ).toBe(true);
    const fewer = structuredClone(apart);
    fewer.tasks.forEach((task) => {
      task.needs[0]!.people.least = 2;
    });
    fewer.crews[0]!.people = 3;
    expect(
      offerOf({ work: fewer, plan: planOf(fewer) }, { work: fewer, plan }, none),
    ).toMatchObject({ gain: 0, needed: true });
  });
});

describe('Whether an offer is worth making', () => {
  const offer = (gain: number, changedOrders: number): Offer => ({
    gain,
    opens: 100,
    acceptedOpens: 100 + gain,
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

  it('says so many minutes as its two times on a clock are apart', () => {
    const between = (acceptedOpens: number, opens: number) =>
      offerSentence({ ...offer(acceptedOpens - opens, 0), acceptedOpens, opens });
    // 45:50 and 45:10 both show as 45, 46:05 and 45:50 do not.
    expect(between(45 + 50 / 60, 45 + 10 / 60)).toBe('opens at the same time; changes no orders');
    expect(between(46 + 5 / 60, 45 + 50 / 60)).toBe('opens 1 min earlier; changes no orders');
    expect(between(45 - 1e-9, 45)).toBe('opens at the same time; changes no orders');
    expect(minuteShown(45 - 1e-9)).toBe(45);
  });
});
