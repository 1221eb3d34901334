import { describe, expect, it } from 'vitest';
import { learningFactor } from '#domain/forecast/doubt/learningCurve.ts';

// The unit curve y(n) = n^b, b = log(rate) / log 2 (Crawford; maxwideman.com/papers/resource/appendix2.htm, model B).
// Units to four figures and running totals to three decimals, computed independently and in agreement with published
// textbook tables.
// biome-ignore-start lint/suspicious/noApproximativeNumericConstant: printed figures, not constants
// biome-ignore format: one repetition a line, as in the source table
const table = [
  [1,  [1, 1], [1, 1], [1, 1], [1, 1]],
  [2,  [0.8, 1.8], [0.85, 1.85], [0.9, 1.9], [0.95, 1.95]],
  [3,  [0.7021, 2.502], [0.7729, 2.623], [0.8462, 2.746], [0.9219, 2.872]],
  [4,  [0.64, 3.142], [0.7225, 3.345], [0.81, 3.556], [0.9025, 3.774]],
  [5,  [0.5956, 3.738], [0.6857, 4.031], [0.783, 4.339], [0.8877, 4.662]],
  [6,  [0.5617, 4.299], [0.657, 4.688], [0.7616, 5.101], [0.8758, 5.538]],
  [7,  [0.5345, 4.834], [0.6337, 5.322], [0.7439, 5.845], [0.8659, 6.404]],
  [8,  [0.512, 5.346], [0.6141, 5.936], [0.729, 6.574], [0.8574, 7.261]],
  [10, [0.4765, 6.315], [0.5828, 7.116], [0.7047, 7.994], [0.8433, 8.954]],
  [16, [0.4096, 8.92], [0.522, 10.383], [0.6561, 12.04], [0.8145, 13.907]],
  [20, [0.3812, 10.485], [0.4954, 12.402], [0.6342, 14.608], [0.8012, 17.13]],
] as const;
// biome-ignore-end lint/suspicious/noApproximativeNumericConstant: printed figures, not constants
const rates = [0.8, 0.85, 0.9, 0.95] as const;

describe('the unit learning curve', () => {
  it.each(table)('at repetition %d has the tabled unit and total', (n, ...columns) => {
    for (const [k, rate] of rates.entries()) {
      const [unit, total] = columns[k]!;
      expect(Math.abs(learningFactor(n, rate) - unit)).toBeLessThanOrEqual(0.5000001e-4);
      let sum = 0;
      for (let each = 1; each <= n; each++) sum += learningFactor(each, rate);
      expect(Math.abs(sum - total)).toBeLessThanOrEqual(0.5000001e-3);
    }
  });

  // Same page: at 80 % the unit curve doubles to 80 % of the unit; the average curve of 1936 would give the second unit
  // 60 % of the first. The two must not be mixed.
  it('is the curve of the unit, not that of the average', () => {
    expect(learningFactor(2, 0.8)).toBeCloseTo(0.8, 12);
    expect(learningFactor(2, 0.8)).not.toBeCloseTo(0.6, 2);
  });

  it('leaves everything as it is at a rate of 1', () => {
    expect(learningFactor(20, 1)).toBe(1);
  });
});
