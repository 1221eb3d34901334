/**
 * The unit learning curve (Crawford): the n-th repetition takes n^b of the first, b = log(rate) / log 2, so that each
 * doubling multiplies the minutes of the *unit* by `rate`. Wright's curve of 1936 has the same form for the cumulative
 * *average* and gives quite other totals; it is not used here. Source: maxwideman.com/papers/resource/appendix2.htm.
 * `n` counts from 1; `rate` is 0.5 to 1, and 1 means that nobody gets faster.
 */
export function learningFactor(n: number, rate: number): number {
  return rate === 1 ? 1 : n ** Math.log2(rate);
}
