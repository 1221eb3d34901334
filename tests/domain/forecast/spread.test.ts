import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cdf, quantile, variance } from '#domain/forecast/spread.ts';
import { expectedMinutes } from '#domain/tasks/expected.ts';
import type { Minutes } from '#domain/tasks/task.ts';

const minutesWithDoubt: fc.Arbitrary<Minutes> = fc
  .tuple(
    fc.double({ min: 0, max: 200, noNaN: true }),
    fc.double({ min: 0.5, max: 300, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
  )
  .map(([quick, range, likelyAt]) => ({
    quick,
    likely: Math.min(quick + range, quick + range * likelyAt),
    slow: quick + range,
  }));

describe.each(['pert', 'triangular'] as const)('the spread of one task as %s', (shape) => {
  it('gives back the minutes whose chance it was asked for', () => {
    fc.assert(
      fc.property(
        minutesWithDoubt,
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        (minutes, p) => {
          const x = quantile(shape, minutes, p);
          expect(x).toBeGreaterThanOrEqual(minutes.quick);
          expect(x).toBeLessThanOrEqual(minutes.slow);
          expect(cdf(shape, minutes, x)).toBeCloseTo(p, 8);
          const range = minutes.slow - minutes.quick;
          expect(Math.abs(quantile(shape, minutes, cdf(shape, minutes, x)) - x)).toBeLessThan(
            1e-6 * range,
          );
        },
      ),
    );
  });

  it('promises a later time at least as surely', () => {
    fc.assert(
      fc.property(
        minutesWithDoubt,
        fc.double({ min: -10, max: 600, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (minutes, x, more) => {
          const earlier = cdf(shape, minutes, x);
          const later = cdf(shape, minutes, x + more);
          expect(earlier).toBeGreaterThanOrEqual(0);
          expect(later).toBeLessThanOrEqual(1);
          expect(later).toBeGreaterThanOrEqual(earlier - 1e-12);
        },
      ),
    );
  });

  it('has the mean and variance that its quantiles add up to', () => {
    fc.assert(
      fc.property(minutesWithDoubt, (minutes) => {
        const cells = 4000;
        let sum = 0;
        let squares = 0;
        for (let k = 0; k < cells; k++) {
          const x = quantile(shape, minutes, (k + 0.5) / cells);
          sum += x / cells;
          squares += (x - expectedMinutes(minutes, shape)) ** 2 / cells;
        }
        const range = minutes.slow - minutes.quick;
        expect(Math.abs(sum - expectedMinutes(minutes, shape)) / range).toBeLessThan(2e-4);
        expect(Math.abs(squares - variance(shape, minutes)) / range ** 2).toBeLessThan(2e-4);
      }),
      { numRuns: 15 },
    );
  });

  it('jumps from never to always where there is no doubt', () => {
    const sure = { quick: 5, likely: 5, slow: 5 };
    expect(expectedMinutes(sure, shape)).toBe(5);
    expect(variance(shape, sure)).toBe(0);
    expect(quantile(shape, sure, 0.9)).toBe(5);
    expect(cdf(shape, sure, 4.999)).toBe(0);
    expect(cdf(shape, sure, 5)).toBe(1);
  });
});
