import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { compile } from '#domain/schedule/compile.ts';
import { placeForward } from '#domain/schedule/forward.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { manningOf } from '#domain/schedule/manning.ts';
import { Ordering } from '#domain/schedule/ordering.ts';
import { Profile } from '#domain/schedule/profile.ts';
import { emptySchedule, openingOf } from '#domain/schedule/schedule.ts';
import type { Work } from '#domain/tasks/work.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { exactOpening } from '#tests/support/exactOpening.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const features = [
  'equipment',
  'skilled',
  'rests',
  'turns',
  'dark',
  'strength',
  'fixed',
  'crossing',
] as const;
type Feature = (typeof features)[number];

/** Five tasks of two crews in whole minutes, with one thing more that a plan must keep to. */
function workWith(feature: Feature, seed: number): Work {
  const random = xoroshiro128plus(seed);
  const draw = (least: number, most: number) => uniformInt(random, least, most);
  const rows = Array.from({ length: 5 }, (_, at) => ({
    id: `t${at}`,
    minutes: draw(1, 4),
    people: draw(1, 3),
    crews: [['a'], ['a'], ['b'], []][draw(0, 3)]!,
    after: at > 0 && draw(0, 2) === 0 ? [`t${draw(0, at - 1)}`] : [],
    zones: [feature === 'crossing' ? ['home', 'landing'][draw(0, 1)]! : 'home'],
    keepOff: feature === 'rests' && draw(0, 3) === 0,
    ...(feature === 'equipment' && { equipment: [{ id: 'jack', count: draw(1, 2) }] }),
    ...(feature === 'dark' && draw(0, 2) === 0 && { daylight: true }),
    ...(feature === 'fixed' && at === 2 && { fixed: { start: draw(4, 6) } }),
  }));
  const rests = (from: number) => (feature === 'rests' ? { rests: [{ from, to: from + 2 }] } : {});
  const change = draw(2, 4);
  /** One after the other eats, the rest work on. */
  const turns = (from: number) =>
    feature === 'turns'
      ? { rests: [0, 2].map((later) => ({ from: from + later, to: from + later + 2, people: 2 })) }
      : {};
  const work = smallWork(rows, {
    crews: [
      {
        id: 'a',
        people: 3,
        ...rests(draw(1, 3)),
        ...turns(change),
        ...(feature === 'skilled' && { skilled: [{ skill: 'weld', people: 1 }] }),
        ...(feature === 'strength' && {
          strength: [
            { from: change, people: 1 },
            { from: change + 3, people: 3 },
          ],
        }),
      },
      {
        id: 'b',
        people: 4,
        ...rests(draw(2, 5)),
        ...turns(change - 1),
        ...(feature === 'skilled' && { skilled: [{ skill: 'weld', people: 2 }] }),
      },
    ],
    zones: [
      { id: 'home', name: 'Home', bank: 'near', room: 6 },
      { id: 'landing', name: 'Landing', bank: 'far', room: 6 },
    ],
  });
  const tasks = work.tasks.map((task) => ({
    ...task,
    needs: task.needs.map((need) =>
      feature === 'skilled' && draw(0, 1) === 0
        ? { ...need, with: [{ skill: 'weld', people: 1 }] }
        : need,
    ),
  }));
  return {
    ...work,
    tasks,
    ...(feature === 'equipment' && { equipment: [{ id: 'jack', name: 'Jack', count: 2 }] }),
    ...(feature === 'dark' && { dark: { spells: [{ from: change, to: change + 4 }], factor: 2 } }),
    ...(feature === 'crossing' && { crossing: 2 }),
  };
}

/** All orders of so many things. */
function orders(count: number): number[][] {
  if (count === 0) return [[]];
  return orders(count - 1).flatMap((order) =>
    Array.from({ length: count }, (_, at) => [
      ...order.slice(0, at),
      count - 1,
      ...order.slice(at),
    ]),
  );
}

/** The earliest opening, in minutes, of all orders in which the tasks can be placed and all ways to man them. */
function earliestOf(work: Work): number {
  const manning = manningOf(work, 'pert', true);
  const compilation = compile(manning, { now: 0, tasks: new Map(), left: new Map() });
  if (!compilation.ok) throw new Error(compilation.reason.sentence);
  const { compiled } = compilation.value;
  const { count, capacity, users, busy } = compiled;
  const order = new Int32Array(count);
  const all = new Uint8Array(count).fill(1);
  const schedule = emptySchedule(compiled);
  const profile = new Profile(capacity, users, busy);
  const ordering = new Ordering(compiled);
  let earliest = Number.POSITIVE_INFINITY;
  for (const keys of orders(count)) {
    ordering.along(Float64Array.from(keys), all, order);
    for (const ways of choices(compiled.wayHead)) {
      schedule.way.set(ways);
      profile.clear(true);
      const placed = placeForward(compiled, profile, order, count, all, schedule);
      if (placed) earliest = Math.min(earliest, openingOf(compiled, schedule) / 60);
    }
  }
  return earliest;
}

/** All choices of one way for each task. */
function choices(wayHead: Int32Array): number[][] {
  let chosen: number[][] = [[]];
  for (let task = 0; task + 1 < wayHead.length; task += 1) {
    const own = Array.from(
      { length: wayHead[task + 1]! - wayHead[task]! },
      (_, at) => wayHead[task]! + at,
    );
    chosen = chosen.flatMap((ways) => own.map((way) => [...ways, way]));
  }
  return chosen;
}

describe.each(features)('Small orders of work with %s, solved to proof', (feature) => {
  const seeds = [1, 2, 3, 4, 5, 6];
  const solved = seeds.map((seed) => {
    const work = workWith(feature, seed);
    const plan = makePlan(work, { shape: 'pert', crews: true });
    if (!plan.ok) throw new Error(plan.reason.sentence);
    expect(checkPlan(work, plan.value, { crews: true })).toEqual([]);
    return { seed, work, plan: plan.value, optimum: exactOpening(work) };
  });

  it.each(solved)('has bound, optimum and plan in this order ($seed)', ({ plan, optimum }) => {
    expect(plan.lowerBound).toBeLessThanOrEqual(optimum + 1e-9);
    expect(plan.minutesToOpen).toBeGreaterThanOrEqual(optimum - 1e-9);
  });

  it.each(solved)('meets the optimum in some order of its tasks ($seed)', ({ work, optimum }) => {
    expect(earliestOf(work)).toBe(optimum);
  });
});
