import type { Doubts } from '../../forecast/doubt/compileDoubt.ts';
import { ticksOf } from '../../forecast/learn/ticks.ts';
import type { Seen } from '../../forecast/moves/seen.ts';
import type { Plan } from '../../schedule/plan.ts';
import { minutesBetween } from '../instants.ts';
import type { BuildState } from '../state.ts';
import { workAsTold } from './asTold.ts';
import { darkAtSite } from './darkAtSite.ts';
import { doubtInForce } from './doubtInForce.ts';
import { pastOf } from './past.ts';

/** What a forecast of the plan in force looks at, from `now` (ISO 8601 UTC). */
export function seenNow(state: BuildState, plan: Plan, now: string): Seen {
  return {
    work: workAsTold(state),
    plan,
    past: pastOf(state, now),
    doubts: doubtsNow(state, plan.minutesToOpen, now),
  };
}

/**
 * What is in doubt, and what was told that says something of it, from `now` (ISO 8601 UTC). `end` is when the bridge may
 * open, in minutes after the start of the build, as far as one knows.
 */
export function doubtsNow(state: BuildState, end: number, now: string): Doubts {
  return {
    doubt: doubtInForce(state),
    dark: darkAtSite(state, Math.max(end, minutesBetween(state.start, now))),
    ticks: ticksOf(state, now),
    toldLoads: state.work.loads.flatMap(({ id }) =>
      (state.loads[id]?.status ?? 'expected') === 'expected' ? [] : [id],
    ),
  };
}
