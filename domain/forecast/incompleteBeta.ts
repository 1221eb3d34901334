/** Lanczos coefficients for g = 7 and nine terms (Lanczos, SIAM J. Numer. Anal. 1, 1964; values from memory). */
const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
  -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
  1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function, for `x` >= 0.5. */
function logGamma(x: number): number {
  const shifted = x - 1;
  let sum = lanczos[0]!;
  for (let k = 1; k < lanczos.length; k++) sum += lanczos[k]! / (shifted + k);
  const t = shifted + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Natural logarithm of the beta function B(a, b), for `a`, `b` >= 0.5. */
export function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/**
 * The continued fraction of NIST DLMF 8.17.22, evaluated front to back (modified Lentz).
 * It converges fast for x < (a + 1) / (a + b + 2); callers reflect other arguments.
 */
function continuedFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < tiny ? tiny : d);
  let value = d;
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 + even * d;
    c = 1 + even / c;
    d = 1 / (Math.abs(d) < tiny ? tiny : d);
    if (Math.abs(c) < tiny) c = tiny;
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 + odd * d;
    c = 1 + odd / c;
    d = 1 / (Math.abs(d) < tiny ? tiny : d);
    if (Math.abs(c) < tiny) c = tiny;
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return value;
}

/**
 * Regularised incomplete beta function I_x(a, b): the share of a beta distribution below `x` (0 to 1).
 * `logB` is `logBeta(a, b)`, passed in because callers ask for many `x` of one shape.
 * Source: NIST Digital Library of Mathematical Functions, 8.17.4 (reflection) and 8.17.22.
 */
export function incompleteBeta(x: number, a: number, b: number, logB: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logB);
  if (x < (a + 1) / (a + b + 2)) return (front * continuedFraction(x, a, b)) / a;
  return 1 - (front * continuedFraction(1 - x, b, a)) / b;
}
