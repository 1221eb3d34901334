import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { incompleteBeta, logBeta } from '#domain/forecast/incompleteBeta.ts';

function share(x: number, a: number, b: number): number {
  return incompleteBeta(x, a, b, logBeta(a, b));
}

/** C(n, j) by the product formula. */
function choose(n: number, j: number): number {
  let value = 1;
  for (let k = 1; k <= j; k++) value = (value * (n - j + k)) / k;
  return value;
}

describe('the regularised incomplete beta function', () => {
  // NIST DLMF 8.17.5: for whole a and b it is a binomial tail,
  // I_x(m, n - m + 1) = sum over j = m..n of C(n, j) x^j (1 - x)^(n - j).
  it('is the binomial tail for whole parameters', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 12 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b, x) => {
          const n = a + b - 1;
          let tail = 0;
          for (let j = a; j <= n; j++) tail += choose(n, j) * x ** j * (1 - x) ** (n - j);
          expect(share(x, a, b)).toBeCloseTo(tail, 12);
        },
      ),
    );
  });

  // NIST DLMF 8.17.4: I_x(a, b) = 1 - I_(1 - x)(b, a).
  it('mirrors when its parameters change places', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 5, noNaN: true }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b, x) => {
          expect(share(x, a, b)).toBeCloseTo(1 - share(1 - x, b, a), 12);
        },
      ),
    );
  });

  it('starts at nothing and ends at all', () => {
    expect(share(0, 2.5, 3.5)).toBe(0);
    expect(share(1, 2.5, 3.5)).toBe(1);
  });
});

describe('the logarithm of the beta function', () => {
  // B(a, b) = (a - 1)! (b - 1)! / (a + b - 1)! for whole numbers; B(1/2, 1/2) = pi.
  it('knows whole numbers and the half', () => {
    expect(Math.exp(logBeta(3, 3))).toBeCloseTo((2 * 2) / 120, 13);
    expect(Math.exp(logBeta(1, 5))).toBeCloseTo(24 / 120, 13);
    expect(Math.exp(logBeta(0.5, 0.5))).toBeCloseTo(Math.PI, 12);
  });
});
