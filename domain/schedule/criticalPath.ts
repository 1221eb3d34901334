import type { Shape } from '../forecast/forecast.ts';
import type { Refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import { pertVariance, plannedSeconds } from '../tasks/expected.ts';
import type { Work } from '../tasks/work.ts';
import { type LinkArrays, linkArrays } from './linkArrays.ts';
import { refuseFaultyWork } from './refuseFaultyWork.ts';

/** One task over links only, in minutes after the start of the build. */
type CriticalTask = {
  readonly task: string;
  readonly earlyStart: number;
  readonly earlyFinish: number;
  readonly lateStart: number;
  readonly lateFinish: number;
  readonly totalFloat: number;
  readonly freeFloat: number;
};

export type CriticalPath = {
  /** Length of the whole network in minutes. */
  readonly minutes: number;
  /** One longest chain of tasks, in order of start. */
  readonly path: readonly string[];
  /** In the order of `work.tasks`. */
  readonly tasks: readonly CriticalTask[];
};

/**
 * The textbook's critical path: links only, no crews, no light, expected minutes with the usual people. Waits, also
 * negative ones, and links that count from a start are taken in; nothing starts before 0. Total float is late start
 * less early start; free float is what a task can slip without moving the early start of anything after it nor the
 * end. Counted in whole seconds inside. Of several longest chains `path` is the one with the largest sum of variances.
 * Refuses work that is faulty, with a loop for one.
 */
export function criticalPath(work: Work, shape: Shape): Result<CriticalPath, Refusal> {
  const faulty = refuseFaultyWork(work);
  if (faulty) {
    return bad(faulty);
  }
  const links = linkArrays(work);
  const seconds = Float64Array.from(links.rows, (row) =>
    plannedSeconds(work.tasks[row]!.minutes, shape, 1),
  );
  const early = earlyStarts(links, seconds);
  const end = early.reduce((latest, start, at) => Math.max(latest, start + seconds[at]!), 0);
  const late = lateStarts(links, seconds, end);
  const free = freeFloats(links, seconds, early, end);

  const tasks: CriticalTask[] = new Array(work.tasks.length);
  for (const [at, row] of links.rows.entries()) {
    const start = early[at]!;
    tasks[row] = {
      task: work.tasks[row]!.id,
      earlyStart: start / 60,
      earlyFinish: (start + seconds[at]!) / 60,
      lateStart: late[at]! / 60,
      lateFinish: (late[at]! + seconds[at]!) / 60,
      totalFloat: (late[at]! - start) / 60,
      freeFloat: free[at]! / 60,
    };
  }
  const path = longestChain(work, links, seconds, early, end);
  return good({ minutes: end / 60, path, tasks });
}

function earlyStarts(links: LinkArrays, seconds: Float64Array): Float64Array {
  const early = new Float64Array(seconds.length);
  for (let to = 0; to < early.length; to += 1) {
    for (let at = links.beforeHead[to]!; at < links.beforeHead[to + 1]!; at += 1) {
      early[to] = Math.max(early[to]!, bound(links, at, seconds, early));
    }
  }
  return early;
}

/** The earliest start that the link at `at` (in the list of what comes before) leaves. */
function bound(links: LinkArrays, at: number, seconds: Float64Array, starts: Float64Array): number {
  const from = links.before[at]!;
  return starts[from]! + (links.beforeFromStart[at] ? 0 : seconds[from]!) + links.beforeWait[at]!;
}

function lateStarts(links: LinkArrays, seconds: Float64Array, end: number): Float64Array {
  const late = seconds.map((length) => end - length);
  for (let from = late.length - 1; from >= 0; from -= 1) {
    for (let at = links.afterHead[from]!; at < links.afterHead[from + 1]!; at += 1) {
      const lag = (links.afterFromStart[at] ? 0 : seconds[from]!) + links.afterWait[at]!;
      late[from] = Math.min(late[from]!, late[links.after[at]!]! - lag);
    }
  }
  return late;
}

function freeFloats(
  links: LinkArrays,
  seconds: Float64Array,
  early: Float64Array,
  end: number,
): Float64Array {
  return seconds.map((length, from) => {
    const start = early[from]!;
    let free = end - start - length;
    for (let at = links.afterHead[from]!; at < links.afterHead[from + 1]!; at += 1) {
      const lag = (links.afterFromStart[at] ? 0 : length) + links.afterWait[at]!;
      free = Math.min(free, early[links.after[at]!]! - lag - start);
    }
    return free;
  });
}

/** Walks back from the end over links that bind, keeping for each task the chain with the most variance. */
function longestChain(
  work: Work,
  links: LinkArrays,
  seconds: Float64Array,
  early: Float64Array,
  end: number,
): string[] {
  const count = seconds.length;
  const variance = new Float64Array(count);
  const comesFrom = new Int32Array(count).fill(-1);
  let last = -1;
  for (let to = 0; to < count; to += 1) {
    let most = 0;
    for (let at = links.beforeHead[to]!; at < links.beforeHead[to + 1]!; at += 1) {
      const from = links.before[at]!;
      if (bound(links, at, seconds, early) !== early[to]) {
        continue;
      }
      if (comesFrom[to] === -1 || variance[from]! > most) {
        comesFrom[to] = from;
        most = variance[from]!;
      }
    }
    variance[to] = most + pertVariance(work.tasks[links.rows[to]!]!.minutes);
    const ends = early[to]! + seconds[to]! === end;
    // `>=` so that a milestone without length at the end still closes the chain.
    if (ends && (last === -1 || variance[to]! >= variance[last]!)) {
      last = to;
    }
  }
  const path: string[] = [];
  for (let at = last; at !== -1; at = comesFrom[at]!) {
    path.push(work.tasks[links.rows[at]!]!.id);
  }
  return path.reverse();
}
