import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overdueShare } from '#domain/forecast/outlook.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import { cdf, quantile } from '#domain/forecast/spread.ts';
import type { Past, PastTask } from '#domain/schedule/past.ts';
import type { Work } from '#domain/tasks/work.ts';
import { estimate, planOf, type Row, workOf } from './smallNetwork.ts';

const options = { runs: 20_000, seed: 11, shape: 'pert', askedFor: null } as const;

function past(now: number, ...tasks: Omit<PastTask, 'crews'>[]): Past {
  return { now, tasks: tasks.map((task) => ({ ...task, crews: [] })) };
}

const one: Row[] = [{ id: 'a', minutes: [10, 20, 40] }];

describe('a forecast of a build under way', () => {
  it('equals the true finish once the build is open', () => {
    fc.assert(
      fc.property(fc.nat({ max: 300 }), fc.nat({ max: 100 }), (finish, since) => {
        const work = workOf([...one, { id: 'b', minutes: [1, 2, 9], after: ['a'] }]);
        const done = past(
          finish + since,
          { task: 'a', status: 'done', start: 0, finish: finish / 2 },
          { task: 'b', status: 'done', start: finish / 2, finish },
        );
        const forecast = simulate(work, planOf(work), {
          ...options,
          runs: 100,
          past: done,
          askedFor: finish,
        });
        expect(new Set([...forecast.percentiles, ...forecast.openings])).toEqual(new Set([finish]));
        expect(forecast.sd).toBe(0);
        expect(forecast.chanceBy).toEqual({ minutes: finish, chance: 1 });
        expect(forecast.onChain).toEqual([{ task: 'b', share: 1 }]);
      }),
      { numRuns: 30 },
    );
  });

  it('starts nothing before now', () => {
    const work = workOf([...one, { id: 'b', minutes: [5, 5, 5], after: ['a'] }]);
    const forecast = simulate(work, planOf(work), {
      ...options,
      past: past(100, { task: 'a', status: 'done', start: 0, finish: 20 }),
    });
    expect(forecast.p10).toBe(105);
    expect(forecast.p90).toBe(105);
  });

  it('keeps a wait that counts from work done', () => {
    const work = workOf(
      [one[0]!, { id: 'b', minutes: [5, 5, 5] }],
      [{ from: 'a', to: 'b', counts: 'finish', wait: 60 }],
    );
    const forecast = simulate(work, planOf(work), {
      ...options,
      past: past(50, { task: 'a', status: 'done', start: 0, finish: 20 }),
    });
    expect(forecast.p50).toBe(85);
    expect(forecast.onChain.map(({ task }) => task)).toEqual(['a', 'b']);
  });

  it.each(['pert', 'triangular'] as const)(
    'draws a task at work from what is left of its curve (%s)',
    (shape) => {
      const work = workOf(one);
      const elapsed = 25;
      const forecast = simulate(work, planOf(work), {
        ...options,
        shape,
        askedFor: 100 + 30,
        past: past(100 + elapsed, { task: 'a', status: 'at-work', start: 100 }),
      });
      const minutes = estimate([10, 20, 40]);
      // P(T <= t | T > e) = (F(t) - F(e)) / (1 - F(e)).
      const before = cdf(shape, minutes, elapsed);
      const chance = (cdf(shape, minutes, 30) - before) / (1 - before);
      const tolerance = 4 * Math.sqrt((chance * (1 - chance)) / options.runs);
      expect(Math.abs(forecast.chanceBy!.chance - chance)).toBeLessThan(tolerance);
      const median = 100 + quantile(shape, minutes, before + 0.5 * (1 - before));
      expect(Math.abs(forecast.p50 - median)).toBeLessThan(0.2);
      expect(forecast.openings[0]!).toBeGreaterThanOrEqual(100 + elapsed);
    },
  );

  it('counts how long it has lasted in minutes of its own crew', () => {
    const work = workOf(one);
    // Half the people: 60 minutes at work are 30 minutes with the usual ones, out of 40 at most.
    const forecast = simulate(work, planOf(work, { stretch: { a: 2 } }), {
      ...options,
      past: past(60, { task: 'a', status: 'at-work', start: 0 }),
    });
    expect(forecast.percentiles[98]!).toBeLessThanOrEqual(80);
    expect(forecast.p90).toBeGreaterThan(60);
  });

  it('gives an overdue task a small stated remainder from now', () => {
    const work = workOf(one);
    const forecast = simulate(work, planOf(work), {
      ...options,
      past: past(200, { task: 'a', status: 'at-work', start: 0 }),
    });
    expect(forecast.p10).toBeCloseTo(200 + overdueShare * 20, 9);
    expect(forecast.p90).toBeCloseTo(200 + overdueShare * 20, 9);
  });

  it('never has a task at work finish in the past', () => {
    fc.assert(
      fc.property(fc.nat({ max: 60 }), fc.double({ min: 0, max: 1, noNaN: true }), (now, part) => {
        const work = workOf(one);
        const forecast = simulate(work, planOf(work), {
          ...options,
          runs: 100,
          past: past(now, { task: 'a', status: 'at-work', start: 0, part }),
        });
        expect(forecast.openings[0]!).toBeGreaterThanOrEqual(now);
      }),
    );
  });

  it('takes a told part for what is left, whatever the clock says', () => {
    const work = workOf(one);
    const forecast = simulate(work, planOf(work), {
      ...options,
      past: past(100, { task: 'a', status: 'at-work', start: 0, part: 0.75 }),
    });
    const minutes = estimate([10, 20, 40]);
    const median = 100 + 0.25 * quantile('pert', minutes, 0.5);
    expect(Math.abs(forecast.p50 - median)).toBeLessThan(0.1);
    expect(forecast.openings[0]!).toBeGreaterThanOrEqual(100 + 0.25 * 10);
    expect(forecast.openings[19]!).toBeLessThanOrEqual(100 + 0.25 * 40);
  });

  it('resumes a stopped task no earlier than now, its links and its hand-overs', () => {
    const rows: Row[] = [
      { id: 'a', minutes: [10, 10, 10], opens: true },
      { id: 'b', minutes: [30, 30, 30] },
    ];
    const work = workOf(rows);
    const stopped: Omit<PastTask, 'crews'> = { task: 'a', status: 'stopped', start: 5, part: 0.5 };
    const free = simulate(work, planOf(work), {
      ...options,
      past: past(50, stopped),
    });
    expect(free.p50).toBe(55);
    const waiting = planOf(work, { handOvers: [{ from: 'b', to: 'a' }] });
    const behind = simulate(work, waiting, {
      ...options,
      past: past(50, stopped, { task: 'b', status: 'at-work', start: 40 }),
    });
    expect(behind.p50).toBe(75);
  });

  it('holds a start-link to the true start of work under way', () => {
    const work = workOf(
      [one[0]!, { id: 'b', minutes: [5, 5, 5] }],
      [{ from: 'a', to: 'b', counts: 'start', wait: 45 }],
    );
    const forecast = simulate(work, planOf(work), {
      ...options,
      past: past(30, { task: 'a', status: 'stopped', start: 10 }),
    });
    expect(forecast.p50).toBe(60);
  });

  it('waits for a load that was told late after the plan was made', () => {
    const bare = workOf(one);
    const work: Work = {
      ...bare,
      tasks: bare.tasks.map((task) => ({ ...task, loads: ['truck'] })),
      loads: [{ id: 'truck', name: 'Truck 5', arrives: 72 }],
    };
    const forecast = simulate(work, planOf(work, { release: { a: 60 } }), options);
    expect(forecast.percentiles[0]!).toBeGreaterThanOrEqual(82);
  });
});
