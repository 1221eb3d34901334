import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { courseOf } from '#domain/forecast/course.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { plannedTask, planOf } from '#tests/support/planOf.ts';
import { randomPast, randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';

/** Minutes turn into seconds and back. */
const rounding = 1e-9;

const none: Past = { now: 0, tasks: [] };

const mixed = {
  seed: fc.integer({ min: 1, max: 1e9 }),
  tasks: fc.integer({ min: 1, max: 30 }),
  crews: fc.integer({ min: 1, max: 5 }),
  zones: fc.integer({ min: 0, max: 4 }),
  waits: fc.boolean(),
  joint: fc.boolean(),
  keepOff: fc.boolean(),
  loads: fc.boolean(),
  holds: fc.boolean(),
  crossing: fc.boolean(),
  strength: fc.boolean(),
  rests: fc.boolean(),
};

/** Any order of work by day, and any with nights. */
const byDay = fc.record(mixed).map(({ seed, ...options }) => randomWork(seed, options));
const withNights = fc
  .record(mixed)
  .map(({ seed, ...options }) => randomWork(seed, { ...options, dark: true }));

const shares = fc.double({ min: 0, max: 1, noNaN: true });

function planned(work: Work, past?: Past): Plan {
  const plan = makePlan(work, { shape: 'pert', crews: true, past, effort: 40 });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  return plan.value;
}

/** What is past at this whole minute when everything goes as planned. */
function asPlanned(plan: Plan, now: number): Past {
  const tasks = plan.tasks
    .filter(({ start }) => start < now)
    .map(({ task, start, finish, crews }) =>
      finish <= now
        ? { task, status: 'done' as const, start, finish, crews }
        : { task, status: 'at-work' as const, start, crews },
    );
  return { now, tasks };
}

function isThePlan(work: Work, plan: Plan, now: number): void {
  const course = courseOf(work, plan, asPlanned(plan, now));
  for (const { task, start, finish } of plan.tasks) {
    expect(course.runs.get(task)!.start).toBeCloseTo(start, 6);
    expect(course.runs.get(task)!.finish).toBeCloseTo(finish, 6);
  }
  expect(course.opening).toBeCloseTo(plan.minutesToOpen, 6);
}

describe('The course of a plan', () => {
  it('is the plan at every moment of it, by day, when everything goes as planned', () => {
    fc.assert(
      fc.property(byDay, shares, (work, share) => {
        const plan = planned(work);
        isThePlan(work, plan, Math.round(share * plan.minutesToOpen));
      }),
      { numRuns: 200 },
    );
  });

  it('is the plan through the night too', () => {
    fc.assert(
      fc.property(withNights, shares, (work, share) => {
        const plan = planned(work);
        isThePlan(work, plan, Math.round(share * plan.minutesToOpen));
      }),
      { numRuns: 200 },
    );
  });

  it('takes in the dark as many times as long as the plan for the dark does', () => {
    fc.assert(
      fc.property(
        fc.record({ ...mixed, rests: fc.constant(false) }),
        fc.integer({ min: 1, max: 8 }),
        ({ seed, ...options }, quarters) => {
          const work = randomWork(seed, options);
          const factor = 1 + quarters / 4;
          const night = { ...work, dark: { spells: [{ from: -60, to: 1e6 }], factor } };
          // The plan was made for the light; what it takes in the dark is the rule's to say.
          const plan = planned(work);
          const dark = courseOf(night, plan, none);
          const inTheDark = planned(night);
          const same = courseOf(night, inTheDark, none);
          for (const { id } of work.tasks) {
            const by = plannedTask(plan, id);
            const { start, finish } = dark.runs.get(id)!;
            expect(Math.abs(finish - start - factor * (by.finish - by.start))).toBeLessThan(2 / 60);
            const own = plannedTask(inTheDark, id);
            const again = same.runs.get(id)!;
            expect(again.finish - again.start).toBeCloseTo(own.finish - own.start, 6);
          }
        },
      ),
    );
  });

  it('starts nothing before now, lets nothing at work be done before now, and changes nothing that is done', () => {
    fc.assert(
      fc.property(withNights, fc.integer(), shares, shares, (work, seed, at, drift) => {
        const plan = planned(work);
        // Now is later than the plan knows, or earlier.
        const then = Math.round(at * plan.minutesToOpen);
        const past = { ...randomPast(seed, plan, then), now: then + 30 * drift };
        const { runs } = courseOf(work, plan, past);
        const happened = new Map(past.tasks.map((before) => [before.task, before]));
        for (const { task, start, finish } of runs.values()) {
          const before = happened.get(task);
          if (before?.status === 'done') {
            expect({ start, finish }).toEqual({ start: before.start, finish: before.finish });
          } else {
            expect(finish).toBeGreaterThanOrEqual(past.now - rounding);
            if (before) expect(start).toBe(before.start);
            else expect(start).toBeGreaterThanOrEqual(past.now - rounding);
          }
        }
      }),
    );
  });

  it('keeps every link to what is still to come', () => {
    fc.assert(
      fc.property(withNights, fc.integer(), shares, (work, seed, at) => {
        const plan = planned(work);
        const past = randomPast(seed, plan, Math.round(at * plan.minutesToOpen));
        const { runs } = courseOf(work, plan, past);
        const begun = new Set(past.tasks.map(({ task }) => task));
        for (const { from, to, counts, wait } of work.links) {
          if (begun.has(to) || (counts === 'start' && begun.has(from))) continue;
          const counted = counts === 'start' ? runs.get(from)!.start : runs.get(from)!.finish;
          expect(runs.get(to)!.start).toBeGreaterThanOrEqual(counted + wait - 1e-6);
        }
      }),
    );
  });

  it('is what a plan made from now says, when that keeps every order', () => {
    // One crew, one after the other: nothing to choose. A is stopped half way in the dark, B is to come.
    const crews = [{ id: 'left', people: 4 }];
    const tasks = [
      { id: 'A', minutes: 20, people: 4, crews: ['left'] },
      { id: 'B', minutes: 30, people: 4, crews: ['left'], after: ['A'] },
    ];
    const work = {
      ...smallWork(tasks, { crews }),
      dark: { spells: [{ from: 10, to: 600 }], factor: 1.5 },
    };
    const plan = planOf(work);
    const who = [{ crew: 'left', people: 4 }];
    const past: Past = {
      now: 40,
      tasks: [{ task: 'A', status: 'stopped', start: 0, part: 0.5, crews: who }],
    };
    // Worked by hand: 10 minutes left of A and 30 of B, each one and a half times as long.
    expect(planOf(work, { past }).minutesToOpen).toBe(100);
    expect(courseOf(work, plan, past).opening).toBeCloseTo(100, 6);
  });

  it('gives a task past its slow estimate a tenth of its likely minutes, in the dark longer', () => {
    const tasks = [{ id: 'A', minutes: 20, people: 4, crews: ['left'] }];
    const work = smallWork(tasks, { crews: [{ id: 'left', people: 4 }] });
    const night = { ...work, dark: { spells: [{ from: -10, to: 600 }], factor: 1.5 } };
    const at = (now: number): Past => ({
      now,
      tasks: [{ task: 'A', status: 'at-work', start: 0, crews: [{ crew: 'left', people: 4 }] }],
    });
    const plan = planOf(work);
    expect(courseOf(work, plan, at(25)).opening).toBeCloseTo(27, 6);
    // In the dark 20 minutes of work take 30: at 25 it is not late.
    expect(courseOf(night, plan, at(25)).opening).toBeCloseTo(30, 6);
    expect(courseOf(night, plan, at(33)).opening).toBeCloseTo(36, 6);
  });

  it('waits for stores as told', () => {
    const tasks = [{ id: 'A', minutes: 20, people: 4, crews: ['left'] }];
    const work = smallWork(tasks, { crews: [{ id: 'left', people: 4 }] });
    const load = { id: 'truck', name: 'Truck', arrives: 10 };
    const stored = {
      ...work,
      tasks: work.tasks.map((task) => ({ ...task, loads: ['truck'] })),
      loads: [load],
    };
    const plan = planOf(stored);
    const late = { ...stored, loads: [{ ...load, arrives: 45 }] };
    expect(courseOf(stored, plan, none).opening).toBe(30);
    expect(courseOf(late, plan, none).opening).toBe(65);
  });

  it('takes so many times as long as it is told to', () => {
    const tasks = [
      { id: 'A', minutes: 20, people: 4, crews: ['left'] },
      { id: 'B', minutes: 10, people: 4, crews: ['left'], after: ['A'] },
    ];
    const work = smallWork(tasks, { crews: [{ id: 'left', people: 4 }] });
    const times = ({ id }: { id: string }) => (id === 'A' ? 1.1 : 1);
    expect(courseOf(work, planOf(work), none, times).opening).toBeCloseTo(32, 6);
  });
});
