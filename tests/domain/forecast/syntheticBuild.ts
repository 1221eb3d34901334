import type { Plan } from '#domain/schedule/plan.ts';
import type { Link, Work } from '#domain/tasks/work.ts';
import { planOf, type Row, workOf } from './smallNetwork.ts';

/** Estimates of the kinds that a bridge build has, in minutes. */
const kinds: readonly (readonly [number, number, number])[] = [
  [8, 10, 15],
  [7, 10, 16],
  [8, 12, 25],
  [6, 10, 20],
  [3, 4, 9],
  [9, 13, 24],
  [3, 4, 8],
  [2, 3, 5],
  [3, 4, 7],
  [1, 2, 4],
  [2, 3, 7],
  [3, 5, 11],
  [2, 2.5, 5],
  [5, 8, 15],
  [25, 40, 80],
  [9, 13, 22],
];

/**
 * An order of work as large as a bridge build's: each task after two or three of the eight before it,
 * a few start-links with a wait, and three hand-overs into each task. No randomness: strides do.
 */
export function syntheticBuild(count: number): { work: Work; plan: Plan } {
  const rows: Row[] = [];
  const starts: Link[] = [];
  const handOvers: { from: string; to: string }[] = [];
  for (let k = 0; k < count; k++) {
    const back = (stride: number) => k - 1 - ((k * stride) % 8);
    const before = [...new Set([back(3), back(5), back(7)])].filter((from) => from >= 0);
    rows.push({
      id: `t${k}`,
      minutes: kinds[k % kinds.length]!,
      after: before.map((from) => `t${from}`),
    });
    if (k % 11 === 10) starts.push({ from: `t${k - 9}`, to: `t${k}`, counts: 'start', wait: 5 });
    for (const from of [k - 4, k - 9, k - 14]) {
      if (from >= 0) handOvers.push({ from: `t${from}`, to: `t${k}` });
    }
  }
  const work = workOf(rows, starts);
  return { work, plan: planOf(work, { handOvers }) };
}
