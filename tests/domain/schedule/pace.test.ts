import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beginBy, finishAt, type Pace, pacesOf, startAt } from '#domain/schedule/pace.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import type { Work } from '#domain/tasks/work.ts';
import { plannedTask, planOf } from '#tests/support/planOf.ts';
import { type Small, smallWork } from '#tests/support/smallWork.ts';

const meal = { crews: [{ id: 'left', people: 4, rests: [{ from: 30, to: 50 }] }] };

function inNight(tasks: readonly Small[], factor = 1.5): Work {
  const work = smallWork(tasks, { crews: [{ id: 'left', people: 4 }] });
  return { ...work, dark: { spells: [{ from: 60, to: 600 }], factor } };
}

describe('Meals and rest', () => {
  it('pause work, which goes on after and finishes later by the rest', () => {
    const plan = planOf(smallWork([{ id: 'A', minutes: 40, crews: ['left'] }], meal));
    expect(plannedTask(plan, 'A')).toMatchObject({ start: 0, finish: 60 });
  });

  it('let work that is just done end when they begin', () => {
    const plan = planOf(smallWork([{ id: 'A', minutes: 30, crews: ['left'] }], meal));
    expect(plan.minutesToOpen).toBe(30);
  });

  it('put off a keep-off task that would run into them, and the reason says so', () => {
    const work = smallWork(
      [{ id: 'push', minutes: 40, crews: ['left'], keepOff: true, zones: ['bridge'] }],
      meal,
    );
    const plan = planOf(work);
    expect(plannedTask(plan, 'push')).toMatchObject({ start: 50, finish: 90 });
    const { reason } = plannedTask(plan, 'push');
    expect(reason).toEqual({ kind: 'rest', of: 'left' });
    expect(reasonSentence(work, reason)).toBe('starts after the rest of left');
  });

  it('put off a task that a hold point follows at once, but not one whose hold may wait', () => {
    const jack = { id: 'jack', minutes: 40, crews: ['left'] };
    const hold = { hold: { measures: [], lapsesOn: [], redo: [] } };
    const check = { id: 'check', minutes: 5, crews: ['left'], ...hold };
    const atOnce = smallWork([jack, { ...check, after: ['jack'] }], meal);
    expect(planOf(atOnce).minutesToOpen).toBe(95);
    const later = smallWork([jack, check], {
      ...meal,
      links: [{ from: 'jack', to: 'check', counts: 'finish', wait: 1 }],
    });
    expect(planOf(later).minutesToOpen).toBe(66);
  });

  it('of either crew pause joint work, and the other crew stands by', () => {
    const crews = [
      { id: 'left', people: 4, rests: [{ from: 10, to: 20 }] },
      { id: 'right', people: 4, rests: [{ from: 20, to: 25 }] },
    ];
    const work = smallWork(
      [
        { id: 'both', minutes: 15, people: 4, crews: ['left', 'right'], joint: true },
        { id: 'own', minutes: 5, people: 4, crews: ['right'], after: ['both'] },
      ],
      { crews },
    );
    const plan = planOf(work);
    // Worked by hand: 10 minutes, 15 minutes of rests one after the other, 5 minutes; then the other task.
    expect(plannedTask(plan, 'both')).toMatchObject({ start: 0, finish: 30 });
    expect(plannedTask(plan, 'own')).toMatchObject({ start: 30, finish: 35 });
  });

  it('have nothing to do with a plan without crews', () => {
    const work = smallWork([{ id: 'A', minutes: 40, crews: ['left'] }], meal);
    expect(planOf(work, { crews: false }).minutesToOpen).toBe(40);
  });

  it('pause a task at work, and one that cannot be left runs on', () => {
    const rows = (keepOff: boolean) =>
      smallWork([{ id: 'A', minutes: 40, crews: ['left'], keepOff, zones: ['z'] }], meal);
    const crews = [{ crew: 'left', people: 1 }];
    const past = { now: 10, tasks: [{ task: 'A', status: 'at-work', start: 5, crews }] } as const;
    expect(planOf(rows(false), { past }).minutesToOpen).toBe(65);
    expect(planOf(rows(true), { past }).minutesToOpen).toBe(45);
  });
});

describe('The dark', () => {
  it('slows work that runs into dusk from dusk on', () => {
    const plan = planOf(inNight([{ id: 'A', minutes: 80, crews: ['left'] }]));
    // 60 minutes by day, 20 more at one and a half times: 90.
    expect(plan.minutesToOpen).toBe(90);
  });

  it('is waited out by a task that wants daylight, which runs at its pace by day', () => {
    const work = inNight([{ id: 'A', minutes: 80, crews: ['left'], daylight: true }]);
    const plan = planOf(work);
    expect(plannedTask(plan, 'A')).toMatchObject({ start: 600, finish: 680 });
    expect(plannedTask(plan, 'A').reason).toEqual({ kind: 'light' });
    expect(reasonSentence(work, { kind: 'light' })).toBe('waits for light');
  });

  it('lets daylight work go first, so that the rest runs into the night', () => {
    const plan = planOf(
      inNight([
        { id: 'any', minutes: 40, people: 4, crews: ['left'] },
        { id: 'day', minutes: 40, people: 4, crews: ['left'], daylight: true },
      ]),
    );
    // 40 by day, then 20 by day and 20 that take 30.
    expect(plan.minutesToOpen).toBe(90);
    expect(plannedTask(plan, 'day').start).toBe(0);
  });

  it('that leaves no day long enough refuses the task with what to do', () => {
    const work = {
      ...inNight([{ id: 'A', minutes: 80, crews: ['left'], daylight: true }]),
      dark: {
        spells: [
          { from: 60, to: 600 },
          { from: 660, to: 1200 },
        ],
        factor: 1,
      },
    };
    expect(() => planOf(work)).toThrow(
      'Task A takes 80 minutes of daylight, and no day is as long. Split it, give it more people, or let it run into the dark.',
    );
  });
});

describe('Any pace', () => {
  const spells = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 })), {
      maxLength: 4,
    })
    .map((gaps) => {
      let time = 0;
      return gaps.map(([before, long]) => {
        const from = time + before;
        time = from + long;
        return { from, to: time };
      });
    });
  const paces = fc
    .record({
      rests: spells,
      dark: spells,
      factor: fc.constantFrom(1, 1.3, 2),
      keepOff: fc.boolean(),
      daylight: fc.boolean(),
    })
    .map(({ rests, dark, factor, keepOff, daylight }): Pace | null => {
      const work = smallWork([{ id: 'A', minutes: 1, keepOff, daylight }], {
        crews: [{ id: 'left', people: 1, rests }],
      });
      const [task] = work.tasks;
      return pacesOf({ ...work, dark: { spells: dark, factor } })(task!, ['left']);
    });
  const seconds = fc.integer({ min: 1, max: 5000 });
  const start = fc.integer({ min: -2000, max: 30_000 });

  it('never finishes earlier for a later start or for longer work', () => {
    fc.assert(
      fc.property(
        paces,
        start,
        fc.nat(4000),
        seconds,
        fc.nat(4000),
        (pace, from, by, long, more) => {
          if (!pace) return;
          const finish = (begin: number, work: number) =>
            finishAt(pace, startAt(pace, begin, work), work);
          expect(finish(from + by, long)).toBeGreaterThanOrEqual(finish(from, long));
          expect(finish(from, long + more)).toBeGreaterThanOrEqual(finish(from, long));
          expect(finish(from, long)).toBeGreaterThanOrEqual(from + long);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('has as latest start by a time one that it may have, and no later one is done by then', () => {
    fc.assert(
      fc.property(paces, start, seconds, (pace, due, long) => {
        if (!pace) return;
        const begin = beginBy(pace, due, long);
        expect(finishAt(pace, begin, long)).toBeLessThanOrEqual(due);
        expect(startAt(pace, begin, long)).toBe(begin);
        const next = startAt(pace, begin + 1, long);
        expect(finishAt(pace, next, long)).toBeGreaterThan(due);
      }),
      { numRuns: 500 },
    );
  });
});
