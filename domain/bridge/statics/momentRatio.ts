import type { Run } from './body.ts';

/**
 * Moment of what lies behind a roller over the moment of what lies ahead of it: below 1 the bridge tips over it.
 * Null while nothing is ahead. `tip` and `roller` are metres ahead of the front rollers.
 */
export function momentRatio(runs: readonly Run[], tip: number, roller: number): number | null {
  let [ahead, behind] = [0, 0];
  for (const { from, to, kilograms } of runs) {
    const [start, end] = [tip - from - roller, tip - to - roller];
    if (start === end) {
      ahead += Math.max(0, kilograms * start);
      behind += Math.max(0, -kilograms * start);
      continue;
    }
    const each = kilograms / (start - end);
    ahead += (each * (Math.max(0, start) ** 2 - Math.max(0, end) ** 2)) / 2;
    behind += (each * (Math.max(0, -end) ** 2 - Math.max(0, -start) ** 2)) / 2;
  }
  return ahead === 0 ? null : behind / ahead;
}
