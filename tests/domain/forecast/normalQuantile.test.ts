import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalDensity } from '#domain/forecast/normal.ts';
import { normalQuantile } from '#domain/forecast/normalQuantile.ts';

describe('the quantile of the normal curve', () => {
  // Any table of the normal curve: 90 %, 95 %, 97.5 % and 99 % (from memory, six decimals).
  it.each([
    [0.5, 0],
    [0.9, 1.281552],
    [0.95, 1.644854],
    [0.975, 1.959964],
    [0.99, 2.326348],
  ])('at %d is the tabled one', (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 6);
    expect(normalQuantile(1 - p)).toBeCloseTo(-z, 6);
  });

  it('undoes the share below', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (z) => {
        // Shares near 1 have too few digits to tell high z apart: those are looked at from below.
        const found = z > 0 ? -normalQuantile(normalCdf(-z)) : normalQuantile(normalCdf(z));
        expect(Math.abs(found - z)).toBeLessThan(1e-8);
      }),
    );
  });

  it('goes far into the tails', () => {
    // P(Z < -7) = 1.27981e-12, P(Z < -9) = 1.12859e-19 (any table of extreme normal tails, from memory).
    expect(normalQuantile(1.27981e-12)).toBeCloseTo(-7, 5);
    expect(normalQuantile(1.12859e-19)).toBeCloseTo(-9, 5);
  });
});

describe('the height of the normal curve', () => {
  it('is the slope of the share below', () => {
    fc.assert(
      fc.property(fc.double({ min: -4, max: 4, noNaN: true }), (z) => {
        const slope = (normalCdf(z + 1e-5) - normalCdf(z - 1e-5)) / 2e-5;
        expect(normalDensity(z)).toBeCloseTo(slope, 8);
      }),
    );
  });
});
