import { describe, expect, it } from 'vitest';
import { simulate } from '#domain/forecast/simulate.ts';
import { planOf, type Row, workOf } from '#tests/domain/forecast/smallNetwork.ts';

const runs = 100_000;

/** `paths` parallel chains of `tasks` equal symmetric tasks each: close to the normal curve by the sum. */
function parallel(paths: number, tasks: number): Row[] {
  const rows: Row[] = [];
  const ends: string[] = [];
  for (let path = 0; path < paths; path++) {
    for (let k = 0; k < tasks; k++) {
      const before = k === 0 ? [] : [`p${path}.${k - 1}`];
      rows.push({ id: `p${path}.${k}`, minutes: [1, 3, 5], after: before });
    }
    ends.push(`p${path}.${tasks - 1}`);
  }
  return [...rows, { id: 'end', minutes: [0, 0, 0], after: ends, opens: true }];
}

function forecastOf(rows: readonly Row[], shape: 'pert' | 'triangular', askedFor: number) {
  const work = workOf(rows);
  return simulate(work, planOf(work), { runs, seed: 7, shape, askedFor });
}

describe('where equal paths meet', () => {
  // Closed forms: the expected latest of k independent N(mu, s) is mu + s / sqrt(pi) for two
  // (0.5642 s) and mu + 0.8463 s for three. A path of 40 tasks of 1-3-5 minutes (triangular) has
  // mu = 120 and s = 0.8165 sqrt(40).
  it.each([
    [2, 0.5642],
    [3, 0.8463],
  ] as const)('%d of them end %d deviations later than one', (paths, later) => {
    const s = 0.8165 * Math.sqrt(40);
    const forecast = forecastOf(parallel(paths, 40), 'triangular', 120);
    // Four standard errors, and a hundredth of s for a sum of 40 not being quite normal.
    expect(Math.abs(forecast.mean - (120 + later * s))).toBeLessThan(
      (4 * s) / Math.sqrt(runs) + 0.01 * s,
    );
  });

  // k independent paths, each with chance p to be on time, are all on time with chance p^k:
  // three even chances are 0.125, five times nine in ten 0.590.
  it('three even chances make one in eight', () => {
    const { chance } = forecastOf(parallel(3, 10), 'triangular', 30).chanceBy!;
    expect(Math.abs(chance - 0.125)).toBeLessThan(4 * Math.sqrt((0.125 * 0.875) / runs));
  });

  it('five times nine in ten make 0.590', () => {
    // One triangular task of 1-3-5 minutes keeps to 4.10557 minutes (5 - sqrt 0.8) nine times in ten.
    const { chance } = forecastOf(parallel(5, 1), 'triangular', 5 - Math.sqrt(0.8)).chanceBy!;
    expect(Math.abs(chance - 0.59049)).toBeLessThan(4 * Math.sqrt((0.59049 * 0.40951) / runs));
  });
});

describe('the published merge example', () => {
  // H. A. Levine, Practical Project Management (2002), p. 210, Fig. 6.3c: one task, then three paths
  // that meet; each path is 20 days by its most likely times. Published: 50 % date 5 days late. The
  // other figures come from an independent simulation of the table, two million draws.
  // biome-ignore format: one task a line, as in the source table
  const rows: Row[] = [
    { id: 'release', minutes: [3, 4, 5] },
    { id: 'makeA', minutes: [3, 5, 10], after: ['release'] },
    { id: 'assembleA', minutes: [11, 11, 22], after: ['makeA'] },
    { id: 'makeB', minutes: [1, 5, 5], after: ['release'] },
    { id: 'assembleB', minutes: [5, 11, 17], after: ['makeB'] },
    { id: 'makeC', minutes: [5, 5, 5], after: ['release'] },
    { id: 'assembleC', minutes: [5, 7, 12], after: ['makeC'] },
    { id: 'testC', minutes: [3, 4, 10], after: ['assembleC'] },
    { id: 'end', minutes: [0, 0, 0], after: ['assembleA', 'assembleB', 'testC'] },
  ];
  const both = Math.sqrt(1 / runs + 1 / 2_000_000);

  it('has its even chance five days after the sum of the likely times (triangular)', () => {
    const forecast = forecastOf(rows, 'triangular', 22);
    expect(Math.abs(forecast.mean - 25.36)).toBeLessThan(0.005 + 4 * forecast.sd * both);
    // A median's standard error is about 1.2533 sd / sqrt(n) on a bell-shaped curve.
    expect(Math.abs(forecast.p50 - 25.07)).toBeLessThan(0.005 + 4 * 1.2533 * forecast.sd * both);
    expect(Math.abs(forecast.chanceBy!.chance - 0.079)).toBeLessThan(
      0.0005 + 4 * Math.sqrt(0.079 * 0.921) * both,
    );
  });

  it('is hardly ever done in the 20 days that every path adds up to (triangular)', () => {
    const { chance } = forecastOf(rows, 'triangular', 20).chanceBy!;
    expect(Math.abs(chance - 0.0035)).toBeLessThan(0.00005 + 4 * Math.sqrt(0.0035 * 0.9965) * both);
  });

  it('has the A path as the one that sets the end in 68 % of the runs (triangular)', () => {
    const share = forecastOf(rows, 'triangular', 20).onChain.find(
      ({ task }) => task === 'assembleA',
    )!.share;
    expect(Math.abs(share - 0.68)).toBeLessThan(0.005 + 4 * Math.sqrt(0.68 * 0.32) * both);
  });

  it('comes earlier when drawn as PERT-beta', () => {
    const forecast = forecastOf(rows, 'pert', 22);
    expect(Math.abs(forecast.p50 - 22.93)).toBeLessThan(0.005 + 4 * 1.2533 * forecast.sd * both);
    expect(Math.abs(forecast.chanceBy!.chance - 0.279)).toBeLessThan(
      0.0005 + 4 * Math.sqrt(0.279 * 0.721) * both,
    );
  });
});
