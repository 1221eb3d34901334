import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulate } from '#domain/forecast/simulate.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Link, Work } from '#domain/tasks/work.ts';
import { planOf, type Row, workOf } from './smallNetwork.ts';
import { syntheticBuild } from './syntheticBuild.ts';

/** A random order of work: links and hand-overs only from earlier rows to later ones, so never a loop. */
const anyBuild: fc.Arbitrary<{ work: Work; plan: Plan }> = fc
  .record({
    estimates: fc.array(fc.tuple(fc.nat({ max: 20 }), fc.nat({ max: 20 }), fc.nat({ max: 40 })), {
      minLength: 2,
      maxLength: 12,
    }),
    arcs: fc.array(
      fc.record({
        one: fc.nat({ max: 11 }),
        other: fc.nat({ max: 11 }),
        kind: fc.constantFrom('finish', 'start', 'hand-over'),
        wait: fc.integer({ min: -5, max: 15 }),
      }),
      { maxLength: 24 },
    ),
    opening: fc.boolean(),
    releases: fc.array(fc.nat({ max: 60 }), { minLength: 12, maxLength: 12 }),
    stretches: fc.array(fc.constantFrom(0.75, 1, 1.5), { minLength: 12, maxLength: 12 }),
  })
  .map(({ estimates, arcs, opening, releases, stretches }) => {
    const rows = estimates.map(
      ([quick, more, most], index): Row => ({
        id: `t${index}`,
        minutes: [quick, quick + more, quick + more + most],
        opens: opening && index === estimates.length - 1,
      }),
    );
    const used = arcs
      .map(({ one, other, ...rest }) => ({
        from: Math.min(one, other),
        to: Math.max(one, other),
        ...rest,
      }))
      .filter(({ from, to }) => from < to && to < rows.length);
    const links = used
      .filter(({ kind }) => kind !== 'hand-over')
      .map(
        ({ from, to, kind, wait }): Link => ({
          from: `t${from}`,
          to: `t${to}`,
          counts: kind === 'start' ? 'start' : 'finish',
          wait,
        }),
      );
    const handOvers = used
      .filter(({ kind }) => kind === 'hand-over')
      .map(({ from, to }) => ({ from: `t${from}`, to: `t${to}` }));
    const work = workOf(rows, links);
    const perTask = <Value>(values: readonly Value[]) =>
      Object.fromEntries(rows.map(({ id }, index) => [id, values[index]!]));
    const plan = planOf(work, {
      handOvers,
      release: perTask(releases),
      stretch: perTask(stretches),
    });
    return { work, plan };
  });

const shapes = fc.constantFrom('pert' as const, 'triangular' as const);
const options = { runs: 200, seed: 3, shape: 'pert', askedFor: null } as const;

/** The same work with one task's minutes changed. */
function withMinutes(work: Work, index: number, change: (minutes: number) => number): Work {
  return {
    ...work,
    tasks: work.tasks.map((task, position) => {
      if (position !== index % work.tasks.length) return task;
      const { quick, likely, slow } = task.minutes;
      return {
        ...task,
        minutes: { quick: change(quick), likely: change(likely), slow: change(slow) },
      };
    }),
  };
}

/** Start of a task by recursion over what it waits for: a second, slower way to the same answer. */
function earliestStart(work: Work, plan: Plan, id: string): number {
  const minutes = (task: string) =>
    work.tasks.find((one) => one.id === task)!.minutes.likely *
    plan.tasks.find((one) => one.task === task)!.stretch;
  const start = (task: string): number =>
    Math.max(
      0,
      plan.tasks.find((one) => one.task === task)!.release,
      ...work.links
        .filter(({ to }) => to === task)
        .map(
          ({ from, counts, wait }) =>
            start(from) + (counts === 'finish' ? minutes(from) : 0) + wait,
        ),
      ...plan.handOvers
        .filter(({ to }) => to === task)
        .map(({ from }) => start(from) + minutes(from)),
    );
  return start(id);
}

describe('a forecast', () => {
  it('is the same for the same seed', () => {
    fc.assert(
      fc.property(anyBuild, fc.integer(), shapes, ({ work, plan }, seed, shape) => {
        const once = simulate(work, plan, { ...options, seed, shape, askedFor: 50 });
        expect(simulate(work, plan, { ...options, seed, shape, askedFor: 50 })).toEqual(once);
      }),
      { numRuns: 40 },
    );
  });

  it('is another one for another seed', () => {
    const { work, plan } = syntheticBuild(30);
    const one = simulate(work, plan, { ...options, seed: 1 });
    expect(simulate(work, plan, { ...options, seed: 2 }).mean).not.toBe(one.mean);
  });

  it('is the longest way to the opening over links, hand-overs and releases where minutes are certain', () => {
    fc.assert(
      fc.property(anyBuild, ({ work, plan }) => {
        const sure = {
          ...work,
          tasks: work.tasks.map((task) => {
            const { likely } = task.minutes;
            return { ...task, minutes: { quick: likely, likely, slow: likely } };
          }),
        };
        const ends = sure.tasks.some(({ opens }) => opens) ? sure.tasks.slice(-1) : sure.tasks;
        const finishes = ends.map(({ id, minutes }) => {
          const { stretch } = plan.tasks.find(({ task }) => task === id)!;
          return earliestStart(sure, plan, id) + minutes.likely * stretch;
        });
        const forecast = simulate(sure, plan, { ...options, runs: 3 });
        expect(forecast.mean).toBeCloseTo(Math.max(...finishes), 9);
        expect(forecast.sd).toBeCloseTo(0, 9);
      }),
    );
  });

  it('never opens earlier when a task takes longer', () => {
    fc.assert(
      fc.property(
        anyBuild,
        fc.nat(),
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.nat({ max: 10 }),
        shapes,
        ({ work, plan }, index, times, more, shape) => {
          const longer = withMinutes(work, index, (minutes) => minutes * times + more);
          const before = simulate(work, plan, { ...options, shape });
          const after = simulate(longer, plan, { ...options, shape });
          after.percentiles.forEach((opening, k) => {
            expect(opening).toBeGreaterThanOrEqual(before.percentiles[k]! - 1e-9);
          });
        },
      ),
    );
  });

  it('never gives a later time a smaller chance', () => {
    fc.assert(
      fc.property(anyBuild, fc.nat({ max: 300 }), fc.nat({ max: 60 }), (build, time, more) => {
        const chanceBy = (askedFor: number) =>
          simulate(build.work, build.plan, { ...options, askedFor }).chanceBy!.chance;
        expect(chanceBy(time + more)).toBeGreaterThanOrEqual(chanceBy(time));
      }),
      { numRuns: 50 },
    );
  });

  it('keeps its promises: at least p of the runs open by the time given for p', () => {
    fc.assert(
      fc.property(anyBuild, fc.integer({ min: 1, max: 99 }), ({ work, plan }, percent) => {
        const first = simulate(work, plan, { ...options, runs: 137 });
        const promised = first.percentiles[percent - 1]!;
        const { chanceBy } = simulate(work, plan, { ...options, runs: 137, askedFor: promised });
        expect(chanceBy!.chance).toBeGreaterThanOrEqual(percent / 100);
      }),
    );
  });

  it('orders its quantiles and agrees with itself', () => {
    fc.assert(
      fc.property(anyBuild, ({ work, plan }) => {
        const forecast = simulate(work, plan, options);
        const sorted = (values: readonly number[]) => [...values].sort((a, b) => a - b);
        expect(forecast.percentiles).toHaveLength(99);
        expect(forecast.openings).toHaveLength(20);
        expect(forecast.percentiles).toEqual(sorted(forecast.percentiles));
        expect(forecast.openings).toEqual(sorted(forecast.openings));
        expect([forecast.p10, forecast.p50, forecast.p80, forecast.p90]).toEqual(
          [10, 50, 80, 90].map((percent) => forecast.percentiles[percent - 1]),
        );
      }),
    );
  });

  it('comes closer to its limit with more runs', () => {
    const { work, plan } = syntheticBuild(60);
    const limit = simulate(work, plan, { ...options, runs: 200_000, seed: 99 }).mean;
    const misses = (runs: number) => {
      let squares = 0;
      for (let seed = 0; seed < 20; seed++) {
        squares += (simulate(work, plan, { ...options, runs, seed }).mean - limit) ** 2;
      }
      return Math.sqrt(squares / 20);
    };
    // A hundred times the runs: a tenth of the error, give or take its own sampling error.
    expect(misses(5000)).toBeLessThan(misses(50) / 4);
  });

  it('draws a task alike whatever becomes of the others', () => {
    const rows: Row[] = [
      { id: 'a', minutes: [1, 4, 9] },
      { id: 'b', minutes: [2, 3, 9], opens: true },
    ];
    const alone = workOf(rows);
    const together = workOf([...rows, { id: 'c', minutes: [5, 6, 9] }]);
    const forecastOf = (work: Work) => simulate(work, planOf(work), options).percentiles;
    expect(forecastOf(together)).not.toEqual(forecastOf(withMinutes(together, 1, (m) => m + 1)));
    expect(forecastOf(withMinutes(alone, 0, (m) => m * 9))).toEqual(forecastOf(alone));
  });

  it('counts the tasks that set the opening, through links and hand-overs', () => {
    const work = workOf([
      { id: 'first', minutes: [5, 5, 5] },
      { id: 'crew', minutes: [8, 8, 8] },
      { id: 'slack', minutes: [1, 1, 1] },
      { id: 'last', minutes: [2, 2, 2], after: ['first', 'slack'], opens: true },
    ]);
    const plan = planOf(work, { handOvers: [{ from: 'crew', to: 'last' }] });
    expect(simulate(work, plan, options).onChain).toEqual([
      { task: 'crew', share: 1 },
      { task: 'last', share: 1 },
    ]);
  });

  it('stops when told to and says of how many runs it speaks', () => {
    const { work, plan } = syntheticBuild(20);
    const heard: number[] = [];
    const forecast = simulate(work, plan, {
      ...options,
      runs: 5000,
      onProgress: (done) => heard.push(done),
      shouldStop: () => heard.length === 2,
    });
    expect(heard).toHaveLength(2);
    expect(forecast.runs).toBe(heard[1]);
    expect(forecast).toEqual(simulate(work, plan, { ...options, runs: forecast.runs }));
  });

  it('tells its progress up to the last run', () => {
    const { work, plan } = syntheticBuild(20);
    const heard: number[] = [];
    simulate(work, plan, { ...options, runs: 1234, onProgress: (done) => heard.push(done) });
    expect(heard.at(-1)).toBe(1234);
  });

  it('takes a chain of ten thousand tasks', () => {
    const rows = Array.from(
      { length: 10_000 },
      (_, k): Row => ({ id: `t${k}`, minutes: [1, 1, 1], after: k ? [`t${k - 1}`] : [] }),
    );
    const work = workOf(rows);
    expect(simulate(work, planOf(work), { ...options, runs: 2 }).p50).toBe(10_000);
  });

  it('throws when plan and work do not belong together', () => {
    const work = workOf([{ id: 'a', minutes: [1, 2, 3] }]);
    const other = workOf([{ id: 'b', minutes: [1, 2, 3] }]);
    expect(() => simulate(work, planOf(other), options)).toThrow('leaves out task a');
    const loop = planOf(work, { handOvers: [{ from: 'a', to: 'a' }] });
    expect(() => simulate(work, loop, options)).toThrow('loop');
    expect(() => simulate(work, planOf(work), { ...options, runs: 0 })).toThrow(RangeError);
  });
});
