import type { Past } from '../../schedule/past.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { Work } from '../../tasks/work.ts';
import type { Doubts } from '../doubt/compileDoubt.ts';
import type { DrawTables } from '../drawTables.ts';
import type { Forecast } from '../forecast.ts';
import { learnPace } from '../learn/learnPace.ts';
import type { Pace } from '../learn/pace.ts';
import { simulate } from '../simulate.ts';

/** What a forecast looks at, at one moment of a build. */
export type Seen = {
  readonly work: Work;
  readonly plan: Plan;
  readonly past: Past;
  readonly doubts: Doubts;
};

/** How two looks are compared: on the same luck. */
export type Pairing = {
  readonly runs: number;
  readonly seed: number;
  readonly tables: DrawTables;
};

/** What day and crews are believed to be at that moment. */
export function paceSeen({ work, plan, past, doubts }: Seen): Pace {
  return doubts.pace ?? learnPace(work, plan, plan.shape, doubts.ticks ?? [], past.now, doubts);
}

export function forecastSeen({ work, plan, past, doubts }: Seen, pairing: Pairing): Forecast {
  return simulate(work, plan, { ...pairing, shape: plan.shape, askedFor: null, past, doubts });
}

/** Minutes after the start of the build by which it opens with this confidence, 0.01 to 0.99. */
export function openingBy(
  { percentiles }: Pick<Forecast, 'percentiles'>,
  confidence: number,
): number {
  const percent = Math.min(99, Math.max(1, Math.ceil(confidence * 100 - 1e-9)));
  return percentiles[percent - 1]!;
}
