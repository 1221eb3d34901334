import { describe, expect, it } from 'vitest';
import { quantile, variance } from '#domain/forecast/spread.ts';
import { expectedMinutes } from '#domain/tasks/expected.ts';
import { estimate } from '#tests/domain/forecast/smallNetwork.ts';

// Means, deviations and quantiles computed independently from the textbook formulas and printed to
// four decimals. Triangular: (a + m + b) / 3 and so on, as in any statistics text. PERT-beta: alpha =
// 1 + 4 (m - a) / (b - a), beta = 1 + 4 (b - m) / (b - a) (probsee.com/p/PERT_distribution); its
// deviation is the exact one, sqrt((mu - a)(b - mu) / 7), not the classic (b - a) / 6.
// biome-ignore-start lint/suspicious/noApproximativeNumericConstant: printed figures, not constants
// biome-ignore format: one estimate a line, as in the source table
const table = [
  // a, m, b,   tri mean, sd,   P10,     P50,     P80,     P90,      PERT mean, sd, P10,    P50,    P80,    P90
  [[0, 1, 2],   [1.0, 0.4082, 0.4472, 1.0, 1.3675, 1.5528],          [1.0, 0.378, 0.4933, 1.0, 1.3468, 1.5067]],
  [[1, 3, 5],   [3.0, 0.8165, 1.8944, 3.0, 3.7351, 4.1056],          [3.0, 0.7559, 1.9865, 3.0, 3.6936, 4.0135]],
  [[2, 3, 10],  [5.0, 1.7795, 2.8944, 4.7085, 6.6534, 7.6336],       [4.0, 1.3093, 2.4785, 3.769, 5.1028, 5.8712]],
  [[4, 5, 12],  [7.0, 1.7795, 4.8944, 6.7085, 8.6534, 9.6336],       [6.0, 1.3093, 4.4785, 5.769, 7.1028, 7.8712]],
  [[4, 4, 10],  [6.0, 1.4142, 4.3079, 5.7574, 7.3167, 8.1026],       [5.0, 0.8452, 4.1251, 4.7767, 5.6513, 6.2143]],
  [[3, 9, 9],   [7.0, 1.4142, 4.8974, 7.2426, 8.3666, 8.6921],       [8.0, 0.8452, 6.7857, 8.2233, 8.7381, 8.8749]],
  [[6, 9, 18],  [11.0, 2.5495, 7.8974, 10.6515, 13.3524, 14.7137],   [10.0, 2.1381, 7.3468, 9.7657, 11.8823, 13.0067]],
] as const;
// biome-ignore-end lint/suspicious/noApproximativeNumericConstant: printed figures, not constants

describe.each(table)('the three-point estimate %j', (points, triangular, pert) => {
  it.each([
    ['triangular', triangular],
    ['pert', pert],
  ] as const)('has the tabled mean, deviation and quantiles as %s', (shape, expected) => {
    const minutes = estimate(points);
    const figures = [
      expectedMinutes(minutes, shape),
      Math.sqrt(variance(shape, minutes)),
      ...[0.1, 0.5, 0.8, 0.9].map((p) => quantile(shape, minutes, p)),
    ];
    figures.forEach((figure, index) => {
      // Half of the last printed decimal.
      expect(Math.abs(figure - expected[index]!)).toBeLessThanOrEqual(0.5000001e-4);
    });
  });
});
