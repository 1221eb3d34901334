import { finishAt, type Pace, startAt } from '../schedule/pace.ts';
import { finishInLight, type LightClock, lightClock } from './light/lightClock.ts';
import type { Network } from './network.ts';

/** Where one run writes. */
export type Run = {
  /** As `Network` numbers them, in minutes after the start of the build. */
  readonly moments: Float64Array;
  /** The arc that set each start; -1 where none did. */
  readonly setBy: Int32Array;
  /** Position of the task whose finish was the opening. */
  last: number;
  /** Not before, by task: the network's, or where loads are late in this run, that. */
  readonly from: Float64Array;
  readonly clock: LightClock;
  /** Of tasks whose crews rest or that want daylight, in place of the clock; null where there are none. */
  readonly paces: readonly (Pace | null)[] | null;
};

export function emptyRun(
  network: Network,
  clock: LightClock = lightClock([], 1),
  paces: Run['paces'] = null,
): Run {
  return {
    paces,
    from: network.from.slice(),
    clock,
    moments: new Float64Array(2 * network.count),
    setBy: new Int32Array(network.count),
    last: network.opening,
  };
}

/**
 * Earliest starts and finishes of all tasks for the drawn `minutes`, over links, hand-overs and
 * releases, around rests and the dark: a start is the latest of what it waits for. Answers the opening, in minutes after the
 * start of the build.
 */
export function earliestTimes(network: Network, minutes: Float64Array, run: Run): number {
  const { count, order, arcAt, arcFrom, arcWait, leastFinish, startedAt } = network;
  const { moments, setBy, from, clock, paces } = run;
  const dusk = clock.at.length > 0 ? clock.at[0]! : Number.POSITIVE_INFINITY;
  for (let k = 0; k < count; k++) {
    const task = order[k]!;
    let begin = from[task]!;
    let by = -1;
    const end = arcAt[task + 1]!;
    for (let arc = arcAt[task]!; arc < end; arc++) {
      const time = moments[arcFrom[arc]!]! + arcWait[arc]!;
      if (time > begin || (by < 0 && time === begin)) {
        begin = time;
        by = arc;
      }
    }
    const started = startedAt[task]!;
    const pace = paces === null ? null : paces[task]!;
    let finish = begin + minutes[task]!;
    if (pace !== null && minutes[task]! > 0) {
      const seconds = minutes[task]! * 60;
      const first = Number.isNaN(started) ? startAt(pace, begin * 60, seconds) : begin * 60;
      begin = first / 60;
      finish = finishAt(pace, first, seconds) / 60;
    } else if (finish > dusk) {
      finish = finishInLight(clock, begin, minutes[task]!);
    }
    moments[2 * task] = Number.isNaN(started) ? begin : started;
    moments[2 * task + 1] = Math.max(finish, leastFinish[task]!);
    setBy[task] = by;
  }
  // Of goals that finish together the planned one counts as the last.
  let last = network.opening;
  for (const goal of network.goals) {
    if (moments[2 * goal + 1]! > moments[2 * last + 1]!) last = goal;
  }
  run.last = last;
  return moments[2 * last + 1]!;
}

/** Adds 1 in `counts` for every task on the chain that set the opening of this run. */
export function countChain(network: Network, run: Run, counts: Float64Array): void {
  let task = run.last;
  for (;;) {
    counts[task]!++;
    const arc = run.setBy[task]!;
    if (arc < 0) return;
    task = network.arcFrom[arc]! >> 1;
  }
}
