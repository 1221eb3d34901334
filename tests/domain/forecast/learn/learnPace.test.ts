import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { plainDoubt, usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { learnPace } from '#domain/forecast/learn/learnPace.ts';
import { logMoments } from '#domain/forecast/learn/logMoments.ts';
import { loading, type Pace, priorPace, projected } from '#domain/forecast/learn/pace.ts';
import type { Tick } from '#domain/forecast/learn/ticks.ts';
import { quantile } from '#domain/forecast/spread.ts';
import { type CrewedRow, crewedPlan, crewedWork } from '../crewedWork.ts';
import { estimate } from '../smallNetwork.ts';

const rows = Array.from(
  { length: 12 },
  (_, k): CrewedRow => ({
    id: `t${k}`,
    minutes: [8, 10, 16],
    crew: k % 2 === 0 ? 'left' : 'right',
    after: k > 1 ? [`t${k - 2}`] : [],
  }),
);
const work = crewedWork(['left', 'right'], rows);
const plan = crewedPlan(work);
const doubt: Doubt = { ...usualDoubt(work), events: [] };

/** Ticks of the first `count` tasks one after the other, each `minutes(k)` long. */
function ticks(count: number, minutes: (k: number) => number): Tick[] {
  const free = new Map<string, number>();
  return rows.slice(0, count).map(({ id, crew }, k) => {
    const start = free.get(crew!) ?? 0;
    const finish = start + minutes(k);
    free.set(crew!, finish);
    return { task: id, crews: [crew!], start, finish, stops: [] };
  });
}

function learn(
  of: readonly Tick[],
  now = 500,
  more: { dark?: { from: number; to: number }[] } = {},
) {
  return learnPace(work, plan, 'pert', of, now, { doubt, ...more });
}

function factorOf(pace: Pace, crew: string): number {
  return Math.exp(projected(pace, loading(pace, [crew])).mean);
}

/** As long as the middle of its logarithm: a task that says that all is as expected. */
const usual = Math.exp(logMoments('pert', estimate([8, 10, 16]))!.mean);

describe('the pace learned', () => {
  it('is what the doubt states while nothing was told', () => {
    expect(learn([])).toEqual(priorPace(work, doubt));
  });

  it('takes no pace from people lost since: what is behind was done with those there were then', () => {
    const behind = ticks(8, () => usual);
    const few = { ...work, crews: work.crews.map((crew) => ({ ...crew, people: 3 })) };
    const before = { left: 6, right: 6 };
    const known = behind.map((tick) => ({ ...tick, fit: before }));
    const pace = (of: readonly Tick[]) => learnPace(few, plan, 'pert', of, 500, { doubt });
    expect(factorOf(pace(known), 'left')).toBeCloseTo(1, 6);
    // Done with the few there are now, the same minutes were quick.
    expect(factorOf(pace(behind), 'left')).toBeLessThan(0.9);
  });

  it('stays where it was when all goes as expected, and becomes surer', () => {
    const pace = learn(ticks(8, () => usual));
    expect(factorOf(pace, 'left')).toBeCloseTo(1, 6);
    const before = projected(priorPace(work, doubt), [1, 1, 0]).variance;
    expect(projected(pace, [1, 1, 0]).variance).toBeLessThan(before / 2);
  });

  it('moves towards a slow crew, the more the more it has done', () => {
    const slow = (k: number) => (k % 2 === 0 ? 1.4 * usual : usual);
    const some = factorOf(learn(ticks(4, slow)), 'left');
    const many = factorOf(learn(ticks(12, slow)), 'left');
    expect(some).toBeGreaterThan(1.05);
    expect(many).toBeGreaterThan(some);
    expect(many).toBeLessThan(1.4);
    expect(factorOf(learn(ticks(12, slow)), 'right')).toBeLessThan(1.12);
  });

  it('weighs slow and quick work alike', () => {
    // As much too slow as too quick, on the scale of ratios: no news of the crew.
    const even = learn(ticks(8, (k) => usual * (k % 4 < 2 ? 1.3 : 1 / 1.3)));
    expect(factorOf(even, 'left')).toBeCloseTo(1, 6);
  });

  it('does not depend on the order of arrival', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 5, max: 30, noNaN: true }), { minLength: 12, maxLength: 12 }),
        fc.shuffledSubarray([...rows.keys()], { minLength: 12 }),
        (minutes, order) => {
          const told = ticks(12, (k) => minutes[k]!);
          expect(learn(order.map((k) => told[k]!))).toEqual(learn(told));
        },
      ),
    );
  });

  it('hears from a task at work only that it lasts', () => {
    const running: Tick = { task: 't0', crews: ['left'], start: 0, finish: null, stops: [] };
    expect(factorOf(learn([running], 1), 'left')).toBeCloseTo(1, 3);
    expect(factorOf(learn([running], 18), 'left')).toBeGreaterThan(1.05);
  });

  it('believes ticks in one go less than ticks one by one', () => {
    // Four bays of the left crew in 60 minutes, told as they went or all at the end.
    const left = ticks(8, () => 15).filter(({ crews }) => crews[0] === 'left');
    const batch = left.map((tick, k) => ({
      ...tick,
      start: k === 0 ? 0 : 59 + k / 4,
      finish: 59.25 + k / 4,
    }));
    const told = learn(left);
    const blurred = learn(batch);
    expect(factorOf(told, 'left')).toBeGreaterThan(1.1);
    expect(Math.abs(Math.log(factorOf(blurred, 'left')))).toBeLessThan(
      Math.log(factorOf(told, 'left')) / 2,
    );
    const open = (pace: Pace) => projected(pace, [1, 1, 0]).variance;
    expect(open(blurred)).toBeGreaterThan(open(told));
  });

  it('does not take the dark, a stop or too few people for a slow crew', () => {
    const inTheDark = ticks(8, () => 1.5 * usual);
    const dark = [{ from: -10, to: 1000 }];
    expect(factorOf(learn(inTheDark, 500, { dark }), 'left')).toBeCloseTo(1, 6);
    const stood = ticks(8, () => usual + 7).map((tick) => ({
      ...tick,
      stops: [{ from: tick.start + 1, to: tick.start + 8 }],
    }));
    expect(factorOf(learn(stood), 'left')).toBeCloseTo(1, 6);
    const few = { ...work, crews: work.crews.map((crew) => ({ ...crew, people: 4 })) };
    const half = learnPace(few, plan, 'pert', inTheDark, 500, { doubt });
    expect(factorOf(half, 'left')).toBeCloseTo(1, 6);
  });

  it('says less of the crews where tasks scatter widely', () => {
    const wild = ticks(12, (k) => usual * (k % 4 < 2 ? 2.5 : 0.5));
    const calm = ticks(12, (k) => usual * (k % 4 < 2 ? 1.2 : 0.95));
    const open = (pace: Pace) => projected(pace, [1, 1, 0]).variance;
    expect(open(learn(wild))).toBeGreaterThan(open(learn(calm)));
  });

  it('learns nothing with day and crews switched off', () => {
    const off = plainDoubt(doubt);
    const pace = learnPace(
      work,
      plan,
      'pert',
      ticks(8, () => 30),
      500,
      { doubt: off },
    );
    expect(pace.mean).toEqual([0, 0, 0]);
  });
});

describe('the logarithm of an estimate', () => {
  it('has the mean and variance that many draws have', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('pert', 'triangular'),
        fc.tuple(
          fc.double({ min: 1, max: 20, noNaN: true }),
          fc.double({ min: 0.1, max: 1, noNaN: true }),
        ),
        (shape, [quick, range]) => {
          const minutes = estimate([quick, quick * (1 + range / 3), quick * (1 + range)]);
          const logs = Array.from({ length: 4000 }, (_, k) =>
            Math.log(quantile(shape, minutes, (k + 0.5) / 4000)),
          );
          const mean = logs.reduce((sum, each) => sum + each, 0) / logs.length;
          const variance = logs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / logs.length;
          const moments = logMoments(shape, minutes)!;
          expect(moments.mean).toBeCloseTo(mean, 3);
          expect(Math.abs(moments.variance / variance - 1)).toBeLessThan(0.03);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('is sure for a sure task, and says nothing of one that may take no time', () => {
    expect(logMoments('pert', estimate([5, 5, 5]))).toEqual({ mean: Math.log(5), variance: 0 });
    expect(logMoments('pert', estimate([0, 1, 2]))).toBeNull();
  });
});
