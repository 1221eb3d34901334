import { describe, expect, it } from 'vitest';
import { classicEstimate } from '#domain/forecast/classic.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import { estimate, planOf, type Row, workOf } from '#tests/domain/forecast/smallNetwork.ts';
import { contractor, hospital } from './textbookNetworks.ts';

const runs = 100_000;

/** Half of the last printed decimal plus four standard errors of `runs` draws (and of the source's two million). */
function tolerance(printed: number, deviation: number): number {
  return printed / 2 + 4 * deviation * Math.sqrt(1 / runs + 1 / 2_000_000);
}

type Case = {
  name: string;
  rows: readonly Row[];
  shape: 'pert' | 'triangular';
  mean: number;
  sd: number | null;
  chances: [week: number, chance: number][];
};

// Whole-network figures from an independent simulation of the same tables, two million draws each.
// biome-ignore format: one case a line
describe.each([
  { name: 'contractor', rows: contractor, shape: 'pert', mean: 44.33, sd: 2.94, chances: [[44, 0.474], [47, 0.816]] },
  { name: 'contractor', rows: contractor, shape: 'triangular', mean: 46.23, sd: 3.69, chances: [[47, 0.594]] },
  { name: 'hospital', rows: hospital, shape: 'pert', mean: 69.93, sd: null, chances: [[72, 0.747]] },
  { name: 'hospital', rows: hospital, shape: 'triangular', mean: 73.41, sd: null, chances: [[72, 0.399]] },
] satisfies Case[])('the $name network drawn as $shape', ({ rows, shape, mean, sd, chances }) => {
  const work = workOf(rows);
  const plan = planOf(work);

  it('has the mean of an independent simulation', () => {
    const forecast = simulate(work, plan, { runs, seed: 20, shape, askedFor: null });
    expect(Math.abs(forecast.mean - mean)).toBeLessThan(tolerance(0.01, forecast.sd));
    // The deviation of a deviation is about sd / sqrt(2 runs).
    if (sd !== null) {
      expect(Math.abs(forecast.sd - sd)).toBeLessThan(tolerance(0.01, sd / Math.SQRT2));
    }
  });

  it.each([...chances])('is done by week %d as often as an independent simulation', (week, p) => {
    const forecast = simulate(work, plan, { runs, seed: 21, shape, askedFor: week });
    const deviation = Math.sqrt(p * (1 - p));
    expect(Math.abs(forecast.chanceBy!.chance - p)).toBeLessThan(tolerance(0.001, deviation));
  });
});

/** The textbook estimate of the named path. */
function classicOf(rows: readonly Row[], path: string, askedFor: number) {
  const minutes = [...path].map((id) => estimate(rows.find((row) => row.id === id)!.minutes));
  return classicEstimate(minutes, askedFor);
}

describe('the textbook single-path estimate', () => {
  // Published: 44 weeks, variance 9, P(T <= 47) = P(z <= 1) = 0.84.
  it('gives the contractor 44 weeks, variance 9 and 0.84 by week 47', () => {
    const { mean, variance, chanceBy } = classicOf(contractor, 'ABCEFJLN', 47);
    expect(mean).toBeCloseTo(44, 10);
    expect(variance).toBeCloseTo(9, 10);
    expect(chanceBy!.chance).toBeCloseTo(0.84, 2);
  });

  // Heizer and Render, Operations Management: path A-C-E-G-H of the paper mill, 15 weeks, variance
  // 3.11; by week 16 with z rounded 0.7157, with z unrounded 0.7146.
  it('gives the paper mill 15 weeks, variance 3.11 and 0.7146 by week 16', () => {
    const path = [
      [1, 2, 3],
      [1, 2, 3],
      [1, 4, 7],
      [3, 4, 11],
      [1, 2, 3],
    ] as const;
    const { mean, variance, chanceBy } = classicEstimate(path.map(estimate), 16);
    expect(mean).toBeCloseTo(15, 10);
    expect(variance).toBeCloseTo(3.11, 2);
    expect(chanceBy!.chance).toBeCloseTo(0.7146, 4);
  });

  // Published 0.8078 and 0.8980 with rounded z; unrounded 0.8079 and 0.8976.
  it.each([
    ['BDHJK', 69, 11.89, 0.8079],
    ['ACGJK', 67, 15.56, 0.8976],
  ] as const)('gives the hospital path %s %d weeks', (path, weeks, variance, chance) => {
    const classic = classicOf(hospital, path, 72);
    expect(classic.mean).toBeCloseTo(weeks, 10);
    expect(classic.variance).toBeCloseTo(variance, 2);
    expect(classic.chanceBy!.chance).toBeCloseTo(chance, 4);
  });

  // Taylor, Introduction to Management Science, solved problem (flylib.com/books/en/3.287.1.117/1):
  // path 1-3-5-7, 24 weeks, variance 5.0, P(<= 28) with z = 1.79 is 0.9633.
  it('gives the solved problem 24 weeks, variance 5 and 0.9633 by week 28', () => {
    const path = [
      [5, 8, 17],
      [3, 5, 7],
      [4, 6, 8],
      [3, 4, 5],
    ] as const;
    const { mean, variance, chanceBy } = classicEstimate(path.map(estimate), 28);
    expect(mean).toBeCloseTo(24, 10);
    expect(variance).toBeCloseTo(5, 3);
    // z is rounded to two decimals in the source: half a hundredth of z moves the chance by 0.0004.
    expect(Math.abs(chanceBy!.chance - 0.9633)).toBeLessThan(0.0005);
  });
});
