import { normalCdf } from '#domain/forecast/normal.ts';

/** What one forecast was worth against how the build went. */
export type Score = {
  /** Whether the truth came by P10, P50, P80 and P90. */
  readonly by: readonly [boolean, boolean, boolean, boolean];
  /** Rank of the truth among the runs, 0 to 1: even where forecasts are calibrated. */
  readonly pit: number;
  /** Minutes from the even chance to the truth. */
  readonly miss: number;
  /** Continuous ranked probability score in minutes: what the whole spread is off. */
  readonly crps: number;
  /** Minutes from P10 to P90. */
  readonly width: number;
};

/** Twice the mean pinball loss over the percentiles (Gneiting and Raftery, J. Am. Stat. Assoc. 102, 2007). */
export function crpsOf(percentiles: readonly number[], truth: number): number {
  const losses = percentiles.map((value, k) => {
    const p = (k + 1) / 100;
    return truth >= value ? p * (truth - value) : (1 - p) * (value - truth);
  });
  return 2 * mean(losses);
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Largest distance of the shares below from an even spread (Kolmogorov). */
export function distanceFromEven(pits: readonly number[]): number {
  const sorted = pits.toSorted((one, other) => one - other);
  return Math.max(
    ...sorted.map((pit, k) => Math.max((k + 1) / sorted.length - pit, pit - k / sorted.length)),
  );
}

/**
 * One test for all shares at once: whether the means of `rows` (a row a build, a column a share less what it should be)
 * could all be 0. Hotelling's T squared in its F form with many builds, so nearly chi squared; answers the chance of a
 * value as large. Chi squared by Wilson and Hilferty (Proc. Natl. Acad. Sci. 17, 1931).
 */
export function jointChance(rows: readonly (readonly number[])[]): number {
  const n = rows.length;
  const size = rows[0]!.length;
  const middle = Array.from({ length: size }, (_, k) => mean(rows.map((row) => row[k]!)));
  const covariance = Array.from({ length: size }, (_, i) =>
    Array.from(
      { length: size },
      (__, j) =>
        rows.reduce((sum, row) => sum + (row[i]! - middle[i]!) * (row[j]! - middle[j]!), 0) /
        (n - 1),
    ),
  );
  const solved = solve(covariance, middle);
  const squared = n * middle.reduce((sum, value, k) => sum + value * solved[k]!, 0);
  const chi = (squared * (n - size)) / (n - 1);
  const spread = 2 / (9 * size);
  return 1 - normalCdf((Math.cbrt(chi / size) - (1 - spread)) / Math.sqrt(spread));
}

/** Gauss with the largest pivot of the column. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, k) => [...row, right[k]!]);
  const size = right.length;
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++) {
      if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    }
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    for (let i = k + 1; i < size; i++) {
      const share = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= size; j++) rows[i]![j]! -= share * rows[k]![j]!;
    }
  }
  const found = new Array<number>(size).fill(0);
  for (let k = size - 1; k >= 0; k--) {
    let value = rows[k]![size]!;
    for (let j = k + 1; j < size; j++) value -= rows[k]![j]! * found[j]!;
    found[k] = value / rows[k]![k]!;
  }
  return found;
}
