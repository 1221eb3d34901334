import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf } from '#domain/forecast/normal.ts';

describe('the normal curve', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1 (from memory, ten decimals).
  it.each([
    [0, 0.5],
    [0.5, 0.6914624613],
    [1, 0.8413447461],
    [2, 0.9772498681],
    [3, 0.998650102],
  ])('has its tabled share below %d deviations', (z, share) => {
    expect(normalCdf(z)).toBeCloseTo(share, 9);
    expect(normalCdf(-z)).toBeCloseTo(1 - share, 9);
  });

  it('rises from nothing to all', () => {
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (z, more) => {
          expect(normalCdf(z + more)).toBeGreaterThanOrEqual(normalCdf(z) - 1e-15);
          expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 12);
        },
      ),
    );
  });
});
