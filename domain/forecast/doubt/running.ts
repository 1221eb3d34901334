import { type Draws, leftOf } from '../draws.ts';
import { lookUp } from '../drawTable.ts';
import type { Shape } from '../forecast.ts';
import { type Outlook, overdueShare } from '../outlook.ts';
import { cdf } from '../spread.ts';
import type { SharedFactors } from './sharedFactors.ts';

const cells = 256;

/** A task at work, which is drawn given that it has lasted so long: in a slow run that rules out less of its curve. */
export type Running = {
  readonly task: number;
  /** Minutes at work so far, over the factor that its minutes have for sure. */
  readonly elapsed: number;
  readonly quick: number;
  readonly slow: number;
  readonly likely: number;
  /** What the minutes of the estimate are multiplied by for sure. */
  readonly factor: number;
  /** Share of its curve below each of 257 even steps from quick to slow. */
  readonly below: Float64Array;
};

/** The tasks at work whose end is left to the draw. `factors` are those of the estimates, by position. */
export function runningTasks(
  outlooks: readonly Outlook[],
  factors: Float64Array,
  shape: Shape,
): Running[] {
  return outlooks.flatMap(({ task: { minutes }, elapsed }, task): Running[] => {
    const factor = factors[task]!;
    if (elapsed === null || factor <= 0) return [];
    const { quick, likely, slow } = minutes;
    const step = (slow - quick) / cells;
    const below = Float64Array.from({ length: cells + 1 }, (_, k) =>
      cdf(shape, minutes, quick + k * step),
    );
    return [{ task, elapsed: elapsed / factor, quick, likely, slow, factor, below }];
  });
}

/** Draws what is left of the tasks at work, now that the factors of the run are known; the random numbers are those of `bits`. */
export function drawRunning(
  running: readonly Running[],
  draws: Draws,
  { groupOf, groupFactor }: SharedFactors,
  bits: Int32Array,
  minutes: Float64Array,
): void {
  for (let k = 0; k < running.length; k++) {
    const { task, elapsed, quick, slow, likely, factor, below } = running[k]!;
    const shared = groupFactor[groupOf[task]!]!;
    const usual = elapsed / shared;
    if (usual >= slow) {
      minutes[task] = overdueShare * likely * shared * factor;
      continue;
    }
    const lost = usual <= quick ? 0 : between(below, ((usual - quick) / (slow - quick)) * cells);
    const place = lookUp(draws.tables.values, draws.tableAt[task]!, leftOf(bits[task]!, lost));
    const whole = (quick + (slow - quick) * place) * shared;
    minutes[task] = Math.max(0, whole - elapsed) * factor;
  }
}

function between(values: Float64Array, at: number): number {
  const k = Math.floor(at);
  return values[k]! + (values[k + 1]! - values[k]!) * (at - k);
}
