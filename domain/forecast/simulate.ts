import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Past } from '../schedule/past.ts';
import type { Plan } from '../schedule/plan.ts';
import type { Work } from '../tasks/work.ts';
import { compileDraws, drawRun } from './draws.ts';
import type { Forecast, Shape } from './forecast.ts';
import { compileNetwork } from './network.ts';
import { outlooks } from './outlook.ts';
import { countChain, earliestTimes, emptyRun } from './run.ts';
import { summary } from './summary.ts';

/** Runs between two looks at `shouldStop` and two calls of `onProgress`: a few milliseconds of work. */
const batch = 500;

export type SimulateOptions = {
  readonly runs: number;
  readonly seed: number;
  readonly shape: Shape;
  /** Minutes after the start of the build at which traffic is wanted; null when nobody said. */
  readonly askedFor: number | null;
  readonly past?: Past;
  readonly onProgress?: (done: number) => void;
  readonly shouldStop?: () => boolean;
};

/**
 * Forecasts the opening: draws the minutes of every task and takes earliest starts over links,
 * hand-overs and releases, with people and order as planned, so that a longer task never opens earlier
 * and no draw knows the future.
 *
 * Draw of a task depends only on seed, number of the run and the task's position in the work:
 * two forecasts over changed plans of one work pair up. `work.loads` should carry the latest expected
 * arrivals. When `shouldStop` says so the forecast is of the runs made until then (`runs` counts them).
 * Throws when plan and work do not belong together, or `runs` is below 1.
 */
export function simulate(work: Work, plan: Plan, options: SimulateOptions): Forecast {
  const { runs, seed, shape, askedFor, past, onProgress, shouldStop } = options;
  if (!(runs >= 1)) throw new RangeError('A forecast takes at least one run.');
  const outlook = outlooks(work, plan, shape, past);
  const network = compileNetwork(work, plan, outlook);
  const draws = compileDraws(outlook, shape);
  const minutes = new Float64Array(network.count);
  const run = emptyRun(network);
  const chain = new Float64Array(network.count);
  const openings = new Float64Array(runs);
  const stretches = xoroshiro128plus(seed);
  let done = 0;
  while (done < runs) {
    // Each run reads its own stretch of the generator, 2^64 numbers after the last one's.
    stretches.jump();
    drawRun(draws, stretches.clone(), minutes);
    openings[done] = earliestTimes(network, minutes, run);
    countChain(network, run, chain);
    done++;
    if (done % batch === 0 || done === runs) {
      onProgress?.(done);
      if (shouldStop?.()) break;
    }
  }
  return {
    runs: done,
    seed,
    shape,
    ...summary(openings.subarray(0, done), askedFor),
    onChain: work.tasks
      .map(({ id }, position) => ({ task: id, share: chain[position]! / done }))
      .filter(({ share }) => share > 0)
      .sort((one, other) => other.share - one.share),
  };
}
