import fc from 'fast-check';
import { Value } from 'typebox/value';
import { describe, expect, it } from 'vitest';
import { Doubt } from '#domain/forecast/doubt/doubt.ts';
import type { DoubtEvent } from '#domain/forecast/doubt/events.ts';
import { plainDoubt, usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { priorPace } from '#domain/forecast/learn/pace.ts';
import { type SimulateOptions, simulate } from '#domain/forecast/simulate.ts';
import type { Past } from '#domain/schedule/past.ts';
import { type CrewedRow, crewedPlan, crewedWork } from '../crewedWork.ts';
import { syntheticBuild } from '../syntheticBuild.ts';

const options: SimulateOptions = { runs: 4000, seed: 3, shape: 'pert', askedFor: null };

const rows: CrewedRow[] = [
  { id: 'a', minutes: [10, 20, 40], crew: 'left' },
  { id: 'b', minutes: [8, 12, 30], crew: 'right' },
  { id: 'c', minutes: [5, 9, 20], crew: 'left', after: ['a', 'b'] },
  { id: 'd', minutes: [4, 6, 11], crew: 'right', after: ['c'], opens: true },
];
const work = crewedWork(['left', 'right'], rows);
const plan = crewedPlan(work);
const plain = plainDoubt(usualDoubt(work));

function forecast(
  doubt: Doubt,
  more: Partial<SimulateOptions> = {},
  dark = [{ from: 15, to: 600 }],
) {
  return simulate(work, plan, { ...options, ...more, doubts: { doubt, dark } });
}

const past: Past = {
  now: 18,
  tasks: [
    { task: 'a', status: 'at-work', start: 2, crews: [{ crew: 'left', people: 6 }] },
    { task: 'b', status: 'done', start: 0, finish: 14, crews: [{ crew: 'right', people: 6 }] },
  ],
};

describe('a forecast with every doubt off', () => {
  it.each([undefined, past])('is the plain forecast, before and during the build', (seen) => {
    const bare = simulate(work, plan, { ...options, ...(seen && { past: seen }) });
    const { crewsOnChain, ...rest } = forecast(plain, { ...(seen && { past: seen }) });
    expect(rest.onChain).toEqual(bare.onChain);
    bare.percentiles.forEach((value, k) => {
      expect(rest.percentiles[k]!).toBeCloseTo(value, 9);
    });
    expect(rest.mean).toBeCloseTo(bare.mean, 9);
    expect(crewsOnChain!.length).toBeGreaterThan(0);
  });

  it('is the plain forecast of a large build to the last digit', () => {
    const build = syntheticBuild(80);
    const off = plainDoubt(usualDoubt(build.work));
    const { crewsOnChain, ...rest } = simulate(build.work, build.plan, {
      ...options,
      runs: 300,
      doubts: { doubt: off, dark: [{ from: 30, to: 90 }] },
    });
    expect(rest).toEqual(simulate(build.work, build.plan, { ...options, runs: 300 }));
    expect(crewsOnChain).toEqual([]);
  });

  it('gives overdue work the same small remainder', () => {
    const late: Past = { ...past, now: 90 };
    const bare = simulate(work, plan, { ...options, past: late });
    expect(forecast(plain, { past: late }).p50).toBeCloseTo(bare.p50, 9);
  });

  it('takes the expected minutes for sure when the own doubt is off too', () => {
    const sure = forecast({ ...plain, own: false });
    // (10 + 4 x 20 + 40) / 6 and so on along a, c, d.
    expect(sure.p10).toBeCloseTo((130 + 61 + 39) / 6, 9);
    expect(sure.sd).toBeCloseTo(0, 9);
  });
});

const factor = fc.double({ min: 0.05, max: 0.3, noNaN: true });

describe('doubt', () => {
  it('does not lower the mean opening when it is added with the mean kept', () => {
    fc.assert(
      fc.property(factor, factor, fc.nat(), (day, crews, seed) => {
        // The middle of a log-normal curve is 1 and its mean exp(s^2 / 2): a condition takes that out again.
        const kept = Math.exp(-(day ** 2 + crews ** 2) / 2);
        const wide: Doubt = {
          ...plain,
          day: { on: true, sigma: day, source: 'test' },
          crews: { on: true, sigma: crews, source: 'test' },
          weather: { on: true, factor: kept, source: 'test' },
        };
        const narrow = { ...plain, own: false };
        const own = forecast(plain, { seed });
        const all = forecast(wide, { seed });
        const error = (sd: number) => (4 * sd) / Math.sqrt(options.runs);
        const sure = forecast(narrow, { seed }).mean;
        expect(own.mean).toBeGreaterThan(sure - error(own.sd));
        expect(all.mean).toBeGreaterThan(own.mean - error(Math.hypot(all.sd, own.sd)));
        expect(all.sd).toBeGreaterThan(own.sd);
      }),
      { numRuns: 15 },
    );
  });

  it('never opens earlier for a longer task, run by run, whatever is doubted', () => {
    const doubt = usualDoubt(work);
    fc.assert(
      fc.property(fc.nat({ max: 3 }), fc.double({ min: 0, max: 30, noNaN: true }), (row, more) => {
        const longer = {
          ...work,
          tasks: work.tasks.map((task, k) => {
            const { quick, likely, slow } = task.minutes;
            const minutes = { quick: quick + more, likely: likely + more, slow: slow + more };
            return k === row ? { ...task, minutes } : task;
          }),
        };
        const dark = [{ from: 20, to: 60 }];
        const one = simulate(work, plan, { ...options, runs: 200, doubts: { doubt, dark } });
        const other = simulate(longer, plan, { ...options, runs: 200, doubts: { doubt, dark } });
        one.percentiles.forEach((value, k) => {
          expect(other.percentiles[k]!).toBeGreaterThanOrEqual(value - 1e-9);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('promises a later time at least as surely, and answers alike for a seed', () => {
    const doubt = usualDoubt(work);
    fc.assert(
      fc.property(fc.nat({ max: 200 }), fc.nat({ max: 60 }), fc.nat(), (asked, more, seed) => {
        const chance = (askedFor: number) =>
          forecast(doubt, { runs: 150, seed, askedFor }).chanceBy!.chance;
        expect(chance(asked + more)).toBeGreaterThanOrEqual(chance(asked));
        expect(forecast(doubt, { runs: 50, seed })).toEqual(forecast(doubt, { runs: 50, seed }));
      }),
      { numRuns: 30 },
    );
  });

  it('widens what many tasks share more than what each has alone', () => {
    const build = syntheticBuild(60);
    const off = plainDoubt(usualDoubt(build.work));
    const shared = { ...off, own: false, day: { on: true, sigma: 0.15, source: 'test' } };
    const { mean, sd } = simulate(build.work, build.plan, {
      ...options,
      doubts: { doubt: shared },
    });
    // One factor on everything: the opening is log-normal with the same sigma, so sd / mean = sqrt(exp(s^2) - 1).
    expect(sd / mean).toBeCloseTo(Math.sqrt(Math.exp(0.15 ** 2) - 1), 2);
  });

  it('has tasks of one crew late together and those of two crews apart', () => {
    const chain = (crew: string) =>
      crewedWork(
        ['left', 'right'],
        [
          { id: 'a', minutes: [10, 10, 10], crew: 'left' },
          { id: 'b', minutes: [10, 10, 10], crew, after: ['a'] },
        ],
      );
    const doubt: Doubt = { ...plain, crews: { on: true, sigma: 0.2, source: 'test' } };
    const sdOf = (of: ReturnType<typeof chain>) =>
      simulate(of, crewedPlan(of), { ...options, runs: 20_000, doubts: { doubt } }).sd;
    expect(sdOf(chain('left')) / sdOf(chain('right'))).toBeCloseTo(Math.SQRT2, 1);
  });

  it('multiplies conditions and practice into the minutes', () => {
    const slow: Doubt = { ...plain, weather: { on: true, factor: 1.3, source: 'test' } };
    expect(forecast(slow).p50).toBeCloseTo(1.3 * forecast(plain).p50, 6);
    const bays = crewedWork(
      ['left'],
      [
        { id: 'a', minutes: [10, 10, 10], crew: 'left', more: { effect: { kind: 'bay', bay: 1 } } },
        {
          id: 'b',
          minutes: [10, 10, 10],
          crew: 'left',
          after: ['a'],
          more: { effect: { kind: 'bay', bay: 2 } },
        },
      ],
    );
    const learns: Doubt = { ...plain, learning: { on: true, rate: 0.8, source: 'test' } };
    const { p50 } = simulate(bays, crewedPlan(bays), { ...options, doubts: { doubt: learns } });
    expect(p50).toBeCloseTo(18, 9);
  });

  it('slows what runs into dusk from dusk on', () => {
    const doubt: Doubt = { ...plain, own: false, light: { ...plain.light, on: true, factor: 2 } };
    const byDay = forecast({ ...plain, own: false }).p50;
    expect(forecast(doubt, {}, [{ from: 25, to: 600 }]).p50).toBeCloseTo(25 + 2 * (byDay - 25), 9);
    const lit = { ...doubt, light: { ...doubt.light, lights: true, lit: 1.2 } };
    expect(forecast(lit, {}, [{ from: 25, to: 600 }]).p50).toBeCloseTo(25 + 1.2 * (byDay - 25), 9);
  });

  it('is a form that is checked', () => {
    const doubt = usualDoubt(work);
    expect(Value.Check(Doubt, doubt)).toBe(true);
    expect(Value.Check(Doubt, plainDoubt(doubt))).toBe(true);
    const { day, ...rest } = doubt;
    expect(Value.Check(Doubt, rest)).toBe(false);
    expect(Value.Check(Doubt, { ...doubt, day: { ...day, sigma: -1 } })).toBe(false);
    expect(Value.Check(Doubt, { ...doubt, more: 1 })).toBe(false);
  });
});

const common = { id: 'e', name: 'an event', on: true, source: 'test' };
const delay = { quick: 30, likely: 30, slow: 30 };

describe('an event', () => {
  const sure = { ...plain, own: false };
  const base = forecast(sure).p50;
  const withEvent = (event: DoubtEvent, more: Partial<SimulateOptions> = {}) =>
    forecast({ ...sure, events: [event] }, { runs: 20_000, ...more });

  it('holds up the task it hits as often as its chance says', () => {
    const event: DoubtEvent = { ...common, kind: 'jam', tasks: ['c'], chance: 0.2, delay };
    const { chanceBy } = withEvent(event, { askedFor: base + 1 });
    expect(Math.abs(chanceBy!.chance - 0.8)).toBeLessThan(4 * Math.sqrt(0.16 / 20_000));
    expect(withEvent({ ...event, chance: 1 }).p50).toBeCloseTo(base + 30, 9);
    expect(withEvent({ ...event, on: false }).p90).toBeCloseTo(base, 9);
  });

  it('makes a truck late that has not come and of which nobody told', () => {
    const loaded = {
      ...work,
      tasks: work.tasks.map((task) => (task.id === 'c' ? { ...task, loads: ['truck'] } : task)),
      loads: [{ id: 'truck', name: 'Truck 1', arrives: 25 }],
    };
    const event: DoubtEvent = { ...common, kind: 'late-load', loads: ['truck'], chance: 1, delay };
    const opens = (toldLoads: string[], more: Partial<SimulateOptions> = {}) =>
      simulate(loaded, plan, {
        ...options,
        ...more,
        doubts: { doubt: { ...sure, events: [event] }, toldLoads },
      }).p50;
    const late = 55 + (61 + 39) / 6;
    expect(opens([])).toBeCloseTo(late, 9);
    expect(opens(['truck'])).toBeCloseTo(late - 30, 9);
    expect(opens([], { past: { now: 26, tasks: [] } })).toBeLessThan(26 + base + 1e-6);
  });

  it('repeats the redo list of a hold that fails, as its links allow, and the hold', () => {
    const held = crewedWork(
      ['left', 'right'],
      [
        { id: 'x', minutes: [10, 10, 10], crew: 'left' },
        { id: 'y', minutes: [4, 4, 4], crew: 'left', after: ['x'] },
        { id: 'z', minutes: [12, 12, 12], crew: 'right' },
        {
          id: 'hold',
          minutes: [3, 3, 3],
          after: ['y', 'z'],
          more: { hold: { measures: [], lapsesOn: [], redo: ['y', 'z', 'x'] } },
        },
        { id: 'end', minutes: [1, 1, 1], after: ['hold'], opens: true },
      ],
    );
    const event: DoubtEvent = { ...common, kind: 'hold-fails', tasks: ['hold'], chance: 0.3 };
    const forecastBy = (askedFor: number) =>
      simulate(held, crewedPlan(held), {
        ...options,
        runs: 20_000,
        askedFor,
        doubts: { doubt: { ...plain, events: [event] } },
      });
    // Once through 18; x and y again (14, z is shorter) and the hold (3): 17 more, with chance 0.3; twice with 0.09.
    expect(new Set(forecastBy(0).percentiles)).toEqual(new Set([18, 35, 52]));
    for (const [by, chance] of [
      [18, 0.7],
      [35, 0.91],
    ] as const) {
      const error = 4 * Math.sqrt((chance * (1 - chance)) / 20_000);
      expect(Math.abs(forecastBy(by).chanceBy!.chance - chance)).toBeLessThan(error);
    }
  });

  it('does not touch what is done, nor the luck of the others', () => {
    const event: DoubtEvent = { ...common, kind: 'jam', tasks: ['b', 'c'], chance: 0.5, delay };
    const off = forecast({ ...plain, events: [{ ...event, on: false }] }, { past });
    const on = forecast({ ...plain, events: [{ ...event, tasks: ['b'] }] }, { past });
    expect(on.percentiles).toEqual(off.percentiles);
  });
});

describe('what a forecast says beside the opening', () => {
  it('counts crews on the chain and spreads milestones', () => {
    const { crewsOnChain, milestones, p10, p90 } = forecast(usualDoubt(work), {
      milestones: ['c', 'd', 'unknown'],
    });
    const share = new Map(crewsOnChain!.map(({ crew, share: often }) => [crew, often]));
    // The right crew does the last task, the left the one before it.
    expect(share).toEqual(
      new Map([
        ['left', 1],
        ['right', 1],
      ]),
    );
    expect(milestones!.map(({ task }) => task)).toEqual(['c', 'd']);
    expect(milestones![1]).toMatchObject({ p10, p90 });
    expect(milestones![0]!.p50).toBeLessThan(milestones![1]!.p50);
  });

  it('counts no crew for what it has done: only what is to come can still be helped', () => {
    const crews = (crew: string) => [{ crew, people: 6 }];
    const done: Past = {
      now: 30,
      tasks: [
        { task: 'a', status: 'done', start: 0, finish: 15, crews: crews('left') },
        { task: 'b', status: 'done', start: 0, finish: 14, crews: crews('right') },
        { task: 'c', status: 'done', start: 15, finish: 28, crews: crews('left') },
      ],
    };
    const { crewsOnChain } = forecast(usualDoubt(work), { past: done });
    expect(crewsOnChain).toEqual([{ crew: 'right', share: 1 }]);
  });

  it('shifts at once when a crew becomes smaller', () => {
    const short = { ...work, crews: work.crews.map((crew) => ({ ...crew, people: 3 })) };
    const doubts = { doubt: plain };
    const { p50 } = simulate(short, plan, { ...options, doubts });
    expect(p50).toBeCloseTo(2 * simulate(work, plan, { ...options, doubts }).p50, 6);
    // Below the least only a new plan helps: the forecast stays that of the least.
    const gone = { ...work, crews: work.crews.map((crew) => ({ ...crew, people: 0 })) };
    const least = simulate(gone, plan, { ...options, doubts }).p50;
    expect(least).toBeCloseTo(3 * simulate(work, plan, { ...options, doubts }).p50, 6);
  });
});

describe('a task at work under shared doubt', () => {
  it('is drawn given that it has lasted so long, in slow runs and in quick ones', () => {
    const alone = crewedWork(['left'], [{ id: 'a', minutes: [10, 20, 40], crew: 'left' }]);
    const doubt: Doubt = { ...plain, day: { on: true, sigma: 0.25, source: 'test' } };
    const now = 30;
    const seen: Past = {
      now,
      tasks: [{ task: 'a', status: 'at-work', start: 0, crews: [{ crew: 'left', people: 6 }] }],
    };
    const tick = { task: 'a', crews: ['left'], start: 0, finish: null, stops: [] };
    const runs = 40_000;
    const drawn = simulate(alone, crewedPlan(alone), {
      ...options,
      runs,
      past: seen,
      doubts: { doubt, ticks: [tick] },
    });
    // The truth by throwing away all runs that finish before now.
    const all = simulate(alone, crewedPlan(alone), {
      ...options,
      runs,
      seed: 99,
      doubts: { doubt, pace: priorPace(alone, doubt) },
    }).percentiles.filter((value) => value > now);
    const middle = all[Math.floor(all.length / 2)]!;
    expect(Math.abs(drawn.p50 - middle)).toBeLessThan(1.5);
    expect(drawn.percentiles[0]!).toBeGreaterThanOrEqual(now);
  });

  it('does not count a stop as work', () => {
    const stops = [{ from: 5, to: 15 }];
    const tick = { task: 'a', crews: ['left'], start: 2, finish: null, stops };
    const pace = priorPace(work, plain);
    const stood = simulate(work, plan, {
      ...options,
      past,
      doubts: { doubt: plain, ticks: [tick], pace },
    });
    const worked = simulate(work, plan, { ...options, past, doubts: { doubt: plain, pace } });
    expect(stood.p50).toBeGreaterThan(worked.p50);
  });
});
