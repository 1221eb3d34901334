import type { Work } from '../../tasks/work.ts';
import type { Doubt } from '../doubt/doubt.ts';

/**
 * What is believed of the pace: the logarithms of the day's factor (first) and of each crew's (in the order of
 * `crews`), jointly normal. `covariance` is row by row. A factor above 1 is slow. Plain data.
 */
export type Pace = {
  readonly crews: readonly string[];
  readonly mean: readonly number[];
  readonly covariance: readonly number[];
};

/** Before anything was seen: medians 1, day and crews each with its stated sigma, independent of each other. */
export function priorPace(work: Work, { day, crews }: Doubt): Pace {
  const size = 1 + work.crews.length;
  const sigma = (k: number) => (k === 0 ? (day.on ? day.sigma : 0) : crews.on ? crews.sigma : 0);
  return {
    crews: work.crews.map(({ id }) => id),
    mean: new Array<number>(size).fill(0),
    covariance: Array.from({ length: size * size }, (_, k) => {
      const row = Math.floor(k / size);
      return k % size === row ? sigma(row) ** 2 : 0;
    }),
  };
}

/**
 * What a task's minutes carry of each factor: the day's whole, and of its crews each an equal share, so that a joint
 * task is as slow as its crews are on the (geometric) middle. Crews that the pace does not know are left out.
 */
export function loading(pace: Pace, crews: readonly string[]): number[] {
  const row = new Array<number>(pace.mean.length).fill(0);
  row[0] = 1;
  const known = crews.map((crew) => pace.crews.indexOf(crew)).filter((at) => at >= 0);
  for (const at of known) row[at + 1]! += 1 / known.length;
  return row;
}

/** Mean and variance of the logarithm of a task's shared factor, and its covariance with each of the factors. */
export function projected({ mean, covariance }: Pace, row: readonly number[]) {
  const size = mean.length;
  const across = new Array<number>(size).fill(0);
  let middle = 0;
  let variance = 0;
  for (let k = 0; k < size; k++) {
    for (let j = 0; j < size; j++) across[k]! += covariance[k * size + j]! * row[j]!;
  }
  for (let k = 0; k < size; k++) {
    middle += row[k]! * mean[k]!;
    variance += row[k]! * across[k]!;
  }
  return { mean: middle, variance, across };
}
