import type { Compiled } from './compile.ts';

/**
 * Longest paths over links with every task in its quickest way, in seconds: `head` is the earliest start (stores, now
 * and the crews' coming on taken in), `tail` the least time from a task's start to the opening, `-Infinity` where the
 * task does not lead to it.
 */
export type HeadsAndTails = {
  readonly quickest: Float64Array;
  readonly head: Float64Array;
  readonly tail: Float64Array;
};

export function headsAndTails(compiled: Compiled): HeadsAndTails {
  const { count, wayHead, seconds, from, goal, release } = compiled;
  const quickest = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const head = new Float64Array(count);
  for (let task = 0; task < count; task += 1) {
    let comesOn = Number.POSITIVE_INFINITY;
    for (let w = wayHead[task]!; w < wayHead[task + 1]!; w += 1) {
      quickest[task] = Math.min(quickest[task]!, seconds[w]!);
      comesOn = Math.min(comesOn, from[w]!);
    }
    head[task] = Math.max(release[task]!, comesOn);
    for (let at = compiled.beforeHead[task]!; at < compiled.beforeHead[task + 1]!; at += 1) {
      const before = compiled.before[at]!;
      const length = compiled.beforeFromStart[at] ? 0 : quickest[before]!;
      head[task] = Math.max(head[task]!, head[before]! + length + compiled.beforeWait[at]!);
    }
  }
  const tail = new Float64Array(count);
  for (let task = count - 1; task >= 0; task -= 1) {
    tail[task] = goal[task] === 1 ? quickest[task]! : Number.NEGATIVE_INFINITY;
    for (let at = compiled.afterHead[task]!; at < compiled.afterHead[task + 1]!; at += 1) {
      const length = compiled.afterFromStart[at] ? 0 : quickest[task]!;
      const through = length + compiled.afterWait[at]! + tail[compiled.after[at]!]!;
      tail[task] = Math.max(tail[task]!, through);
    }
  }
  return { quickest, head, tail };
}
