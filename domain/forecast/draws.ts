import { lookUp } from './drawTable.ts';
import type { DrawTables } from './drawTables.ts';
import type { Shape } from './forecast.ts';
import type { Outlook } from './outlook.ts';

/** All that drawing the minutes of a run needs, in flat arrays by task position. */
export type Draws = {
  readonly quick: Float64Array;
  readonly range: Float64Array;
  readonly ruledOut: Float64Array;
  /** Where the task's table begins in `tables`. */
  readonly tableAt: Int32Array;
  readonly tables: DrawTables;
};

/** A source of random 32-bit whole numbers, negative ones included. */
export type Random = { next(): number };

/** Sets up the draws of all tasks. Tasks with estimates of one shape share one table. */
export function compileDraws(
  outlooks: readonly Outlook[],
  shape: Shape,
  tables: DrawTables,
): Draws {
  return {
    quick: Float64Array.from(outlooks, ({ quick }) => quick),
    range: Float64Array.from(outlooks, ({ quick, slow }) => slow - quick),
    ruledOut: Float64Array.from(outlooks, ({ ruledOut }) => ruledOut),
    tableAt: Int32Array.from(outlooks, ({ task }) => tables.at(shape, task.minutes)),
    tables,
  };
}

/**
 * Draws the minutes of every task for one run into `minutes` and keeps the random numbers in `bits`. Each task takes
 * exactly one, done or not, so that draws of one run pair up between two forecasts.
 */
export function drawRun(
  draws: Draws,
  random: Random,
  minutes: Float64Array,
  bits: Int32Array,
): void {
  const { quick, range, ruledOut, tableAt } = draws;
  const tables = draws.tables.values;
  for (let task = 0; task < minutes.length; task++) {
    const own = leftOf(random.next(), ruledOut[task]!);
    bits[task] = own;
    minutes[task] = quick[task]! + range[task]! * lookUp(tables, tableAt[task]!, own);
  }
}

/** A task at work is drawn from what is left of its curve: the number squeezed into the share not ruled out. */
export function leftOf(bits: number, ruledOut: number): number {
  return ruledOut > 0 ? (ruledOut * 2 ** 32 + (1 - ruledOut) * (bits >>> 0)) | 0 : bits;
}
