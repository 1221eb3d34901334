import type { Forecast } from './forecast.ts';

/** Sums of decimal minutes miss by a few binary digits; a microsecond is no delay. Minutes. */
export const sameMoment = 1e-8;

/** The figures of a forecast that come from its openings alone. Sorts `openings` (minutes) in place. */
export function summary(
  openings: Float64Array,
  askedFor: number | null,
): Omit<Forecast, 'runs' | 'seed' | 'shape' | 'onChain'> {
  openings.sort();
  const count = openings.length;
  const mean = openings.reduce((sum, opening) => sum + opening, 0) / count;
  const squares = openings.reduce((sum, opening) => sum + (opening - mean) ** 2, 0);
  return {
    mean,
    sd: Math.sqrt(squares / count),
    p10: quantileOfSorted(openings, 0.1),
    p50: quantileOfSorted(openings, 0.5),
    p80: quantileOfSorted(openings, 0.8),
    p90: quantileOfSorted(openings, 0.9),
    chanceBy: askedFor === null ? null : { minutes: askedFor, chance: shareBy(openings, askedFor) },
    openings: Array.from({ length: 20 }, (_, k) => quantileOfSorted(openings, (2 * k + 1) / 40)),
    percentiles: Array.from({ length: 99 }, (_, k) => quantileOfSorted(openings, (k + 1) / 100)),
  };
}

/**
 * The earliest opening that a share `p` of the runs keeps to: never a value between two runs, so that
 * "nine in ten by" is true of at least nine tenths of them.
 */
export function quantileOfSorted(sorted: Float64Array, p: number): number {
  const rank = Math.ceil(p * sorted.length - 1e-9);
  return sorted[Math.min(sorted.length, Math.max(1, rank)) - 1]!;
}

/** Share of the sorted openings at or before `minutes` (binary search). */
function shareBy(sorted: Float64Array, minutes: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= minutes + sameMoment) low = middle + 1;
    else high = middle;
  }
  return low / sorted.length;
}
