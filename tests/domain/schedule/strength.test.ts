import { describe, expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import { workFaults } from '#domain/tasks/checkWork.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { plannedTask, planOf } from '#tests/support/planOf.ts';
import { type Small, smallWork } from '#tests/support/smallWork.ts';

function left(change: Partial<Crew>) {
  return [{ id: 'left', people: 4, ...change }];
}

const four = (id: string, rest: Partial<Small> = {}): Small => ({
  id,
  minutes: 20,
  people: 4,
  crews: ['left'],
  ...rest,
});

describe('The strength of a crew', () => {
  it('that comes on later, a window with nobody between, makes tasks wait for it', () => {
    const strength = [
      { from: 30, people: 0 },
      { from: 60, people: 4 },
    ];
    const work = smallWork([four('A'), four('B')], { crews: left({ strength }) });
    const plan = planOf(work);
    // The first is done before the crew goes; the second would not be.
    expect(plan.minutesToOpen).toBe(80);
    const last = plan.tasks.at(-1)!;
    expect(last).toMatchObject({ start: 60, reason: { kind: 'window', of: 'left' } });
    expect(last.release).toBe(60);
  });

  it('that grows lets more be done at once', () => {
    const strength = [{ from: 10, people: 8 }];
    const work = smallWork([four('A'), four('B')], { crews: left({ strength }) });
    expect(planOf(work).minutesToOpen).toBe(30);
  });

  it('that shrinks leaves a task with the people who stay, and it stretches', () => {
    const strength = [{ from: 10, people: 2 }];
    const work = smallWork([four('A', { people: [2, 4, 4] })], { crews: left({ strength }) });
    const plan = planOf(work);
    // With all four it would not be done by 10: two take twice as long from the start.
    expect(plannedTask(plan, 'A')).toMatchObject({
      start: 0,
      finish: 40,
      crews: [{ crew: 'left', people: 2 }],
    });
  });

  it('that is gone for good refuses what it leaves undone', () => {
    const work = smallWork([four('A'), four('B')], {
      crews: left({ strength: [{ from: 30, people: 0 }] }),
    });
    const plan = makePlan(work, { shape: 'pert', crews: true });
    expect(!plan.ok && plan.reason).toMatchObject({ code: 'window-too-short', of: ['left'] });
  });

  it('from the start is that of its last step by then', () => {
    const work = smallWork([four('A')], {
      crews: left({ people: 2, strength: [{ from: 0, people: 4 }] }),
    });
    expect(planOf(work).minutesToOpen).toBe(20);
  });
});

describe('People of a crew who rest while the others work on', () => {
  const rests = [
    { from: 10, to: 30, people: 2 },
    { from: 30, to: 50, people: 2 },
  ];

  it('leave the work of the others standing where it was, and are missing for what needs all', () => {
    const work = smallWork([four('two', { people: 2, minutes: 40 }), four('all')], {
      crews: left({ rests }),
    });
    const plan = planOf(work);
    expect(plannedTask(plan, 'two')).toMatchObject({ start: 0, finish: 40 });
    const last = plannedTask(plan, 'all');
    expect(last).toMatchObject({ start: 50, reason: { kind: 'rest', of: 'left' } });
    expect(reasonSentence(work, last.reason)).toBe('starts after the rest of left');
  });

  it('let a keep-off task with few people run through, which a rest of the whole crew would put off', () => {
    const push = four('push', { people: 2, minutes: 40, keepOff: true, zones: ['bridge'] });
    const inTurns = smallWork([push], { crews: left({ rests }) });
    expect(plannedTask(planOf(inTurns), 'push')).toMatchObject({ start: 0, finish: 40 });
    const whole = smallWork([push], { crews: left({ rests: [{ from: 10, to: 30 }] }) });
    expect(plannedTask(planOf(whole), 'push')).toMatchObject({ start: 30, finish: 70 });
  });

  it('are a fault where they are more than the crew has', () => {
    const over = (crew: Partial<Crew>) => {
      const crews = [...left({ rests, ...crew }), { id: 'right', people: 2 }];
      return workFaults(smallWork([four('A')], { crews })).map(({ path, found }) => [path, found]);
    };
    expect(over({})).toEqual([]);
    expect(over({ people: 1 })).toEqual([
      ['/crews/0/rests', '1 more people lent or resting than there are at minute 10'],
    ]);
    expect(over({ lent: [{ crew: 'right', people: 3, from: 40 }] })).toEqual([
      ['/crews/0/lent', '1 more people lent or resting than there are at minute 40'],
    ]);
  });
});

describe('People lent to another crew', () => {
  const crews = [
    { id: 'left', people: 4, lent: [{ crew: 'right', people: 2, from: 20, to: 50 }] },
    { id: 'right', people: 2 },
  ];

  it('work there, come from what they did before, and come back', () => {
    const work = smallWork(
      [
        four('first', { minutes: 20 }),
        four('right', { crews: ['right'], minutes: 30 }),
        four('last', { minutes: 10, after: ['right'] }),
      ],
      { crews },
    );
    const plan = planOf(work);
    expect(plannedTask(plan, 'right')).toMatchObject({ start: 20, finish: 50 });
    expect(plan.handOvers).toContainEqual({
      from: 'first',
      to: 'right',
      kind: 'crew',
      of: 'right',
      people: 2,
    });
    // The two who stayed come from the first task, the two who were lent from a task that the link names.
    expect(plannedTask(plan, 'last')).toMatchObject({ start: 50, finish: 60 });
    expect(plan.minutesToOpen).toBe(60);
  });

  it('are missing where they come from', () => {
    const work = smallWork([four('A', { minutes: 25 })], { crews });
    expect(plannedTask(planOf(work), 'A')).toMatchObject({
      start: 50,
      reason: { kind: 'window', of: 'left' },
    });
  });

  it('are a fault where they are more than the crew has', () => {
    const crewsOver = [
      { id: 'left', people: 4, lent: [{ crew: 'right', people: 5, from: 20, to: 50 }] },
      { id: 'right', people: 2 },
    ];
    expect(workFaults(smallWork([four('A')], { crews: crewsOver }))).toEqual([
      {
        path: '/crews/0/lent',
        found: '1 more people lent than there are at minute 20',
        expected: 'at most the people the crew then has',
      },
    ]);
  });

  it('are a fault where the other crew is not there', () => {
    const nowhere = left({ lent: [{ crew: 'none', people: 1, from: 5 }] });
    expect(workFaults(smallWork([four('A')], { crews: nowhere }))).toMatchObject([
      { path: '/crews/0/lent/0/crew', found: 'none' },
    ]);
  });
});
