import { compileNetwork } from '#domain/forecast/network.ts';
import { type Outlook, outlooks } from '#domain/forecast/outlook.ts';
import { earliestTimes, emptyRun } from '#domain/forecast/run.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { pastOf } from '#domain/progress/views/past.ts';
import type { PlannedTask } from '#domain/schedule/plan.ts';
import { minuteOf } from '../words/units.ts';

/** When a task ran or will run, in minutes after the start of the build. */
export type Run = {
  readonly task: string;
  readonly start: number;
  readonly finish: number;
  /** On the chain of links and hand-overs that sets the opening, seen from now. */
  readonly critical: boolean;
};

/** How the build went so far and goes on by plan, from now. */
export type Course = {
  readonly runs: ReadonlyMap<string, Run>;
  /** Ids of the chain that sets the opening, first to last. */
  readonly chain: readonly string[];
  readonly opening: number;
};

/**
 * What was told, and from now on the earliest starts over links and hand-overs with the planned minutes: the same rule
 * as plan and forecast, without the doubt. Null without a plan.
 */
export function courseOf(state: BuildState, now: number): Course | null {
  const { plan } = state;
  if (!plan) return null;
  const work = {
    ...state.work,
    loads: state.work.loads.map((load) => {
      const told = state.loads[load.id];
      return told ? { ...load, arrives: minuteOf(state.start, told.at) } : load;
    }),
  };
  const seen = outlooks(work, plan, plan.shape, pastOf(state, new Date(now).toISOString()));
  const planned = new Map(plan.tasks.map((one) => [one.task, one]));
  const network = compileNetwork(work, plan, seen);
  const run = emptyRun(network);
  const minutes = Float64Array.from(seen, (one) => minutesLeft(one, planned.get(one.task.id)));
  const opening = earliestTimes(network, minutes, run);

  const chain: string[] = [];
  for (let at = network.opening; ; ) {
    chain.push(work.tasks[at]!.id);
    const arc = run.setBy[at]!;
    if (arc < 0) break;
    at = network.arcFrom[arc]! >> 1;
  }
  const critical = new Set(chain);
  const runs = new Map(
    work.tasks.map(({ id }, position) => [
      id,
      {
        task: id,
        start: run.moments[2 * position]!,
        finish: run.moments[2 * position + 1]!,
        critical: critical.has(id),
      },
    ]),
  );
  return { runs, chain: chain.reverse(), opening };
}

/** Planned minutes, less the share that is done; for a task past its slow estimate the little it is given. */
function minutesLeft({ task, quick, slow }: Outlook, planned: PlannedTask | undefined): number {
  if (!planned || slow <= quick) return slow;
  const whole = task.minutes.slow * planned.stretch;
  return whole > 0 ? (planned.finish - planned.start) * (slow / whole) : 0;
}
