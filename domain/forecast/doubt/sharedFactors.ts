import type { Random } from '../draws.ts';
import { cholesky } from '../learn/cholesky.ts';
import { loading, type Pace } from '../learn/pace.ts';
import { normalQuantile } from '../normalQuantile.ts';

/** The factors that many tasks share, as one run draws them. Tasks with the same crews are one group. */
export type SharedFactors = {
  /** Of the day and the crews together. */
  readonly size: number;
  readonly mean: Float64Array;
  readonly lower: Float64Array;
  /** True when there is nothing to draw: every run has the same factors. */
  readonly sure: boolean;
  /** Group of each task by its position. */
  readonly groupOf: Int32Array;
  readonly groupRows: Float64Array;
  /** The drawn factor of each group. */
  readonly groupFactor: Float64Array;
  readonly normals: Float64Array;
  readonly logs: Float64Array;
};

/** Lays out the factors of `pace` for tasks with these crews (ids, by position). */
export function sharedFactors(pace: Pace, crews: readonly (readonly string[])[]): SharedFactors {
  const size = pace.mean.length;
  const groups = new Map<string, { at: number; row: number[] }>();
  const groupOf = Int32Array.from(crews, (ids) => {
    const key = [...ids].sort().join(' ');
    const group = groups.get(key) ?? { at: groups.size, row: loading(pace, ids) };
    groups.set(key, group);
    return group.at;
  });
  const lower = cholesky(pace.covariance, size);
  const shared = {
    size,
    mean: Float64Array.from(pace.mean),
    lower,
    sure: lower.every((value) => value === 0),
    groupOf,
    groupRows: Float64Array.from([...groups.values()].flatMap(({ row }) => row)),
    groupFactor: new Float64Array(groups.size),
    normals: new Float64Array(size),
    logs: Float64Array.from(pace.mean),
  };
  fillGroups(shared);
  return shared;
}

/** Draws day and crews for one run: as many random numbers as there are factors, whatever is known of them. */
export function drawFactors(shared: SharedFactors, random: Random): void {
  const { size, mean, lower, sure, normals, logs } = shared;
  for (let k = 0; k < size; k++) {
    const share = ((random.next() >>> 0) + 0.5) / 2 ** 32;
    if (!sure) normals[k] = normalQuantile(share);
  }
  if (sure) return;
  for (let k = 0; k < size; k++) {
    let log = mean[k]!;
    for (let j = 0; j <= k; j++) log += lower[k * size + j]! * normals[j]!;
    logs[k] = log;
  }
  fillGroups(shared);
}

function fillGroups({ size, groupRows, groupFactor, logs }: SharedFactors): void {
  for (let group = 0; group < groupFactor.length; group++) {
    let log = 0;
    for (let k = 0; k < size; k++) log += groupRows[group * size + k]! * logs[k]!;
    groupFactor[group] = Math.exp(log);
  }
}
