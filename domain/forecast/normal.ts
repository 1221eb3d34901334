/**
 * Share of the standard normal curve below `z`.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.11; all terms of the series
 * have one sign, so the absolute error stays near 1e-16.
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) return Number.NaN;
  // Beyond nine standard deviations the tail is below 1e-18.
  if (z > 9) return 1;
  if (z < -9) return 0;
  let term = z;
  let sum = z;
  for (let n = 3; Math.abs(term) > 1e-18; n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return 0.5 + sum * Math.exp(-0.5 * z * z - 0.5 * Math.log(2 * Math.PI));
}

/** Height of the standard normal curve at `z`. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}
