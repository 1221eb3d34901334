import { fillTable, lookUp, tableSize } from './drawTable.ts';
import type { Shape } from './forecast.ts';
import type { Outlook } from './outlook.ts';

/** All that drawing the minutes of a run needs, in flat arrays by task position. */
export type Draws = {
  readonly quick: Float64Array;
  readonly range: Float64Array;
  readonly ruledOut: Float64Array;
  /** Where the task's table begins in `tables`. */
  readonly tableAt: Int32Array;
  readonly tables: Float64Array;
};

/** A source of random 32-bit whole numbers, negative ones included. */
export type Random = { next(): number };

/** Sets up the draws of all tasks. Tasks with estimates of one shape share one table. */
export function compileDraws(outlooks: readonly Outlook[], shape: Shape): Draws {
  const count = outlooks.length;
  const quick = new Float64Array(count);
  const range = new Float64Array(count);
  const ruledOut = new Float64Array(count);
  const tableAt = new Int32Array(count);
  const estimates = new Map<number, { at: number; minutes: Outlook['task']['minutes'] }>();
  outlooks.forEach((outlook, position) => {
    quick[position] = outlook.quick;
    range[position] = outlook.slow - outlook.quick;
    ruledOut[position] = outlook.ruledOut;
    const { minutes } = outlook.task;
    if (minutes.slow <= minutes.quick) return;
    // Where the likely minutes lie between quick and slow is all that the shape depends on.
    const likelyAt = (minutes.likely - minutes.quick) / (minutes.slow - minutes.quick);
    const known = estimates.get(likelyAt) ?? { at: estimates.size * tableSize, minutes };
    estimates.set(likelyAt, known);
    tableAt[position] = known.at;
  });
  // One table at least, so that a task without doubt has numbers to multiply by its range of 0.
  const tables = new Float64Array(Math.max(1, estimates.size) * tableSize);
  for (const { at, minutes } of estimates.values()) fillTable(tables, at, shape, minutes);
  return { quick, range, ruledOut, tableAt, tables };
}

/**
 * Draws the minutes of every task for one run into `minutes`. Each task takes exactly one random
 * number, done or not, so that draws of one run pair up between two forecasts.
 */
export function drawRun(draws: Draws, random: Random, minutes: Float64Array): void {
  const { quick, range, ruledOut, tableAt, tables } = draws;
  for (let task = 0; task < minutes.length; task++) {
    let bits = random.next();
    const lost = ruledOut[task]!;
    // A task at work is drawn from what is left of its curve.
    if (lost > 0) bits = (lost * 2 ** 32 + (1 - lost) * (bits >>> 0)) | 0;
    minutes[task] = quick[task]! + range[task]! * lookUp(tables, tableAt[task]!, bits);
  }
}
