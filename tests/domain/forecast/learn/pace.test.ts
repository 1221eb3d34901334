import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { cholesky } from '#domain/forecast/learn/cholesky.ts';
import { loading, type Pace, priorPace, projected } from '#domain/forecast/learn/pace.ts';
import { learnFinished, learnRunning } from '#domain/forecast/learn/update.ts';
import { normalCdf, normalDensity } from '#domain/forecast/normal.ts';
import { crewedWork } from '../crewedWork.ts';

const one: Pace = { crews: [], mean: [0.1], covariance: [0.04] };
const log = fc.double({ min: -1, max: 1, noNaN: true });
const variance = fc.double({ min: 0.001, max: 1, noNaN: true });

describe('learning from a finished task', () => {
  // Normal mean with known variance, normal prior, as in every textbook of Bayesian statistics: the posterior precision
  // is the sum of the precisions, the posterior mean the mean weighted by them.
  it('is the normal-normal update', () => {
    fc.assert(
      fc.property(log, variance, (y, own) => {
        const { mean, covariance } = learnFinished(one, { row: [1], log: y, variance: own });
        const precision = 1 / 0.04 + 1 / own;
        expect(covariance[0]!).toBeCloseTo(1 / precision, 10);
        expect(mean[0]!).toBeCloseTo((0.1 / 0.04 + y / own) / precision, 10);
      }),
    );
  });

  // Worked with round figures: prior N(0, 1), error variance 1, one observation 2: posterior N(1, 1/2). Four
  // observations with mean 2 and error variance 4: the same, as their mean has error variance 1.
  it('comes to the round figures of a worked case', () => {
    const prior: Pace = { crews: [], mean: [0], covariance: [1] };
    const once = learnFinished(prior, { row: [1], log: 2, variance: 1 });
    expect(once.mean[0]!).toBeCloseTo(1, 12);
    expect(once.covariance[0]!).toBeCloseTo(0.5, 12);
    const four = [0, 1, 3, 4].reduce(
      (pace, y) => learnFinished(pace, { row: [1], log: y, variance: 4 }),
      prior,
    );
    expect(four.mean[0]!).toBeCloseTo(1, 12);
    expect(four.covariance[0]!).toBeCloseTo(0.5, 12);
  });

  it('does not depend on the order of arrival', () => {
    const work = crewedWork(['left', 'right', 'stores']);
    const prior = priorPace(work, usualDoubt(work));
    const tell = fc.record({
      crews: fc.subarray(['left', 'right', 'stores']),
      log,
      variance,
    });
    fc.assert(
      fc.property(fc.array(tell, { maxLength: 12 }), fc.nat(), (tells, turn) => {
        const learn = (list: typeof tells) =>
          list.reduce(
            (pace, { crews, ...rest }) =>
              learnFinished(pace, { row: loading(pace, crews), ...rest }),
            prior,
          );
        const shift = tells.length > 0 ? turn % tells.length : 0;
        const turned = [...tells.slice(shift), ...tells.slice(0, shift)].reverse();
        const ways = [learn(tells), learn(turned)] as const;
        ways[0].mean.forEach((value, k) => {
          expect(ways[1].mean[k]!).toBeCloseTo(value, 9);
        });
        ways[0].covariance.forEach((value, k) => {
          expect(ways[1].covariance[k]!).toBeCloseTo(value, 9);
        });
      }),
    );
  });

  it('shares what it learns between the day and the crew, by what was open about each', () => {
    const work = crewedWork(['left', 'right']);
    const prior: Pace = {
      ...priorPace(work, usualDoubt(work)),
      covariance: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    };
    const slow = learnFinished(prior, { row: loading(prior, ['left']), log: 0.9, variance: 1 });
    expect(slow.mean).toEqual([0.3, 0.3, 0].map((value) => expect.closeTo(value, 12)));
    // A slow left crew hints at a slow day, and so at a slow right crew.
    expect(projected(slow, loading(slow, ['right'])).mean).toBeCloseTo(0.3, 12);
  });

  it('learns nothing where nothing is open', () => {
    const sure: Pace = { crews: [], mean: [0], covariance: [0] };
    expect(learnFinished(sure, { row: [1], log: 1, variance: 0 })).toEqual(sure);
    expect(learnFinished(sure, { row: [1], log: 1, variance: 1 }).mean).toEqual([0]);
  });
});

describe('learning from a task still at work', () => {
  /** Mean and variance of a normal curve times the chance to last, added up in small steps. */
  function added(mean: number, own: number, elapsed: number, scatter: number) {
    const sd = Math.sqrt(own);
    let sum = 0;
    let first = 0;
    let second = 0;
    for (let k = 0; k < 40_000; k++) {
      const x = mean + sd * (-10 + (20 * (k + 0.5)) / 40_000);
      const weight = normalDensity((x - mean) / sd) * normalCdf((x - elapsed) / Math.sqrt(scatter));
      sum += weight;
      first += weight * x;
      second += weight * x * x;
    }
    return { mean: first / sum, variance: second / sum - (first / sum) ** 2 };
  }

  it('has mean and variance of the curve that lasting so long leaves', () => {
    fc.assert(
      fc.property(log, variance, (elapsed, scatter) => {
        const learned = learnRunning(one, { row: [1], log: elapsed, variance: scatter });
        const expected = added(0.1, 0.04, elapsed, scatter);
        expect(learned.mean[0]!).toBeCloseTo(expected.mean, 5);
        expect(learned.covariance[0]!).toBeCloseTo(expected.variance, 5);
      }),
      { numRuns: 20 },
    );
  });

  it('never believes the crew to be faster for it, and learns next to nothing from a fresh start', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 5, noNaN: true }), variance, (elapsed, scatter) => {
        const learned = learnRunning(one, { row: [1], log: elapsed, variance: scatter });
        expect(learned.mean[0]!).toBeGreaterThanOrEqual(0.1);
        expect(learned.covariance[0]!).toBeLessThanOrEqual(0.04 + 1e-15);
        expect(learned.covariance[0]!).toBeGreaterThanOrEqual(0);
      }),
    );
    const fresh = { row: [1], log: Number.NEGATIVE_INFINITY, variance: 0.1 };
    expect(learnRunning(one, fresh)).toEqual(one);
  });
});

describe("Cholesky's method", () => {
  it('finds the lower triangle that gives the matrix back', () => {
    const entry = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(fc.array(entry, { minLength: 9, maxLength: 9 }), (a) => {
        // A A' is symmetric and never negative; with a little more of its own for each factor none hangs wholly on others,
        // where what is left of it would be lost in rounding.
        const matrix = Array.from({ length: 9 }, (_, k) => {
          const [i, j] = [Math.floor(k / 3), k % 3];
          const own = i === j ? 0.001 : 0;
          return [0, 1, 2].reduce((sum, m) => sum + a[3 * i + m]! * a[3 * j + m]!, own);
        });
        const lower = cholesky(matrix, 3);
        for (let i = 0; i < 3; i++) {
          for (let j = 0; j < 3; j++) {
            const value = [0, 1, 2].reduce(
              (sum, m) => sum + lower[3 * i + m]! * lower[3 * j + m]!,
              0,
            );
            expect(value).toBeCloseTo(matrix[3 * i + j]!, 5);
            if (j > i) expect(lower[3 * i + j]).toBe(0);
          }
        }
      }),
    );
  });

  it('leaves a factor without doubt alone', () => {
    expect([...cholesky([0, 0, 0, 0.25], 2)]).toEqual([0, 0, 0, 0.5]);
  });
});
