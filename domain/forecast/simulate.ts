import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Past } from '../schedule/past.ts';
import type { Plan } from '../schedule/plan.ts';
import type { Work } from '../tasks/work.ts';
import { type ChainCount, countCrews, crewCounts } from './crewsOnChain.ts';
import { compileDoubt, type Doubts, darkIn, drawDoubt } from './doubt/compileDoubt.ts';
import { compileDraws, drawRun } from './draws.ts';
import { DrawTables } from './drawTables.ts';
import type { Forecast, Shape } from './forecast.ts';
import { crewsOf } from './learn/crewsOf.ts';
import { lightClock } from './light/lightClock.ts';
import { taskPaces } from './light/taskPaces.ts';
import { MilestoneTimes } from './milestones.ts';
import { compileNetwork, type Network } from './network.ts';
import { outlooks } from './outlook.ts';
import { countChain, earliestTimes, emptyRun, type Run } from './run.ts';
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
  /** Sources of doubt beside the tasks' own minutes; absent: none, and tasks are independent. */
  readonly doubts?: Doubts;
  /** Ids of tasks whose spread is wanted too. */
  readonly milestones?: readonly string[];
  /** Shared between forecasts that follow each other, to save filling them again. */
  readonly tables?: DrawTables;
  /** Sees every run, with the network it was made on, before the next one overwrites it. */
  readonly onRun?: (run: Run, network: Network) => void;
  readonly onProgress?: (done: number) => void;
  readonly shouldStop?: () => boolean;
};

/**
 * Forecasts the opening: draws the minutes of every task and takes earliest starts over links,
 * hand-overs and releases, with people and order as planned, so that a longer task never opens earlier
 * and no draw knows the future.
 *
 * Draw of a task depends only on the seed, the number of the run and the task's position in the work:
 * two forecasts over changed plans of one work pair up, and so do the factors and events of `doubts`, which
 * are drawn after the tasks. `work.loads` should carry the latest expected arrivals and `work.crews` the
 * people there are. When `shouldStop` says so the forecast is of the runs made until then (`runs` counts
 * them). Throws when plan and work do not belong together, or `runs` is below 1.
 */
export function simulate(work: Work, plan: Plan, options: SimulateOptions): Forecast {
  const { runs, seed, shape, askedFor, past, doubts, milestones, onProgress, shouldStop } = options;
  if (!(runs >= 1)) throw new RangeError('A forecast takes at least one run.');
  const tables = options.tables ?? new DrawTables();
  const compiled = doubts && compileDoubt(work, plan, shape, past, tables, doubts);
  const outlook = compiled?.outlooks ?? outlooks(work, plan, shape, past);
  const network = compileNetwork(work, plan, outlook);
  const draws = compiled?.draws ?? compileDraws(outlook, shape, tables);
  const minutes = new Float64Array(network.count);
  const bits = new Int32Array(network.count);
  const dark = doubts ? darkIn(doubts) : work.dark;
  const clock = compiled?.clock ?? lightClock(dark?.spells ?? [], dark?.factor ?? 1);
  const run = emptyRun(network, clock, taskPaces(work, plan, past, dark));
  const chain = new Float64Array(network.count);
  const crews: ChainCount | null = doubts
    ? crewCounts(work, crewsOf(work, plan, past), past)
    : null;
  const openings = new Float64Array(runs);
  const asked = milestones && new MilestoneTimes(work, milestones, runs);
  const stretches = xoroshiro128plus(seed);
  let done = 0;
  while (done < runs) {
    // Each run reads its own stretch of the generator, 2^64 numbers after the last one's.
    stretches.jump();
    if (compiled) {
      run.from.set(network.from);
      drawDoubt(compiled, stretches.clone(), minutes, bits, run.from);
    } else {
      drawRun(draws, stretches.clone(), minutes, bits);
    }
    openings[done] = earliestTimes(network, minutes, run);
    countChain(network, run, chain);
    if (crews) countCrews(network, run, crews, done);
    asked?.keep(run, done);
    options.onRun?.(run, network);
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
    onChain: sharesOf(chain, done, (row) => work.tasks[row]!.id).map(({ of, share }) => ({
      task: of,
      share,
    })),
    ...(crews && {
      crewsOnChain: sharesOf(crews.counts, done, (row) => work.crews[row]!.id).map(
        ({ of, share }) => ({ crew: of, share }),
      ),
    }),
    ...(asked && { milestones: asked.spreads(done) }),
  };
}

/** Those that were counted at all, the most often first. */
function sharesOf(counts: Float64Array, runs: number, nameOf: (row: number) => string) {
  return Array.from(counts, (count, row) => ({ row, share: count / runs }))
    .filter(({ share }) => share > 0)
    .sort((one, other) => other.share - one.share)
    .map(({ row, share }) => ({ of: nameOf(row), share }));
}
