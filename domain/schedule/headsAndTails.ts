import type { Compiled } from './compile.ts';
import { finishAt, startAt } from './pace.ts';

/**
 * Longest paths over links with every task in its quickest way, in seconds: `head` is the earliest start (stores, now
 * and the crews' coming on taken in) and `done` the earliest finish (with rests and the dark), `tail` the least time from a task's start to the opening, `rest` that from its
 * finish; `-Infinity` where the task does not lead to it, and `rest` also where only its start does.
 */
export type HeadsAndTails = {
  readonly quickest: Float64Array;
  readonly head: Float64Array;
  readonly done: Float64Array;
  readonly tail: Float64Array;
  readonly rest: Float64Array;
};

export function headsAndTails(compiled: Compiled): HeadsAndTails {
  const { count, wayHead, seconds, from, goal, release } = compiled;
  const quickest = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const head = new Float64Array(count);
  const done = new Float64Array(count);
  for (let task = 0; task < count; task += 1) {
    let comesOn = Number.POSITIVE_INFINITY;
    for (let w = wayHead[task]!; w < wayHead[task + 1]!; w += 1) {
      quickest[task] = Math.min(quickest[task]!, seconds[w]!);
      comesOn = Math.min(comesOn, from[w]!);
    }
    head[task] = Math.max(release[task]!, comesOn);
    for (let at = compiled.beforeHead[task]!; at < compiled.beforeHead[task + 1]!; at += 1) {
      const before = compiled.before[at]!;
      const counted = compiled.beforeFromStart[at] ? head[before]! : done[before]!;
      head[task] = Math.max(head[task]!, counted + compiled.beforeWait[at]!);
    }
    done[task] = earliestFinish(compiled, task, head[task]!);
  }
  const tail = new Float64Array(count);
  const rest = new Float64Array(count);
  for (let task = count - 1; task >= 0; task -= 1) {
    rest[task] = goal[task] === 1 ? 0 : Number.NEGATIVE_INFINITY;
    tail[task] = Number.NEGATIVE_INFINITY;
    for (let at = compiled.afterHead[task]!; at < compiled.afterHead[task + 1]!; at += 1) {
      const through = compiled.afterWait[at]! + tail[compiled.after[at]!]!;
      const bounded = compiled.afterFromStart[at] ? tail : rest;
      bounded[task] = Math.max(bounded[task]!, through);
    }
    tail[task] = Math.max(tail[task]!, quickest[task]! + rest[task]!);
  }
  return { quickest, head, done, tail, rest };
}

/** The earliest finish of the task from `head` on in whichever way, with what its pace costs. */
function earliestFinish(compiled: Compiled, task: number, head: number): number {
  const { wayHead, seconds, pace, from } = compiled;
  let earliest = Number.POSITIVE_INFINITY;
  for (let w = wayHead[task]!; w < wayHead[task + 1]!; w += 1) {
    const own = pace[w]!;
    const begin = Math.max(head, from[w]!);
    const length = seconds[w]!;
    const finish =
      own === null ? begin + length : finishAt(own, startAt(own, begin, length), length);
    earliest = Math.min(earliest, finish);
  }
  return earliest;
}
