import type { Arcs } from './problem.ts';

/** Puts the tasks in order of rising key into `order`; equal keys keep the order of the task numbers. */
export function orderByKey(keys: Int32Array, order: Int32Array, scratch: Scratch): void {
  const tasks = order.length;
  let least = 0x7fffffff;
  let most = -0x80000000;
  for (let task = 0; task < tasks; task++) {
    const key = keys[task]!;
    if (key < least) least = key;
    if (key > most) most = key;
  }
  const span = most - least + 1;
  if (span > COUNTED * tasks) {
    const pairs = scratch.pairs;
    for (let task = 0; task < tasks; task++) pairs[task] = (keys[task]! - least) * tasks + task;
    pairs.sort();
    for (let at = 0; at < tasks; at++) order[at] = pairs[at]! % tasks;
    return;
  }
  // Few different keys: counting them is several times faster than sorting.
  const counts = scratch.counts;
  counts.fill(0, 0, span + 1);
  for (let task = 0; task < tasks; task++) counts[keys[task]! - least + 1]! += 1;
  for (let key = 1; key <= span; key++) counts[key]! += counts[key - 1]!;
  for (let task = 0; task < tasks; task++) order[counts[keys[task]! - least]!++] = task;
}

/**
 * Makes keys rise along arcs, so that nothing is placed before what it waits for: by a start-link or a negative wait a
 * task may start, or seen from the end finish, before the one it comes after.
 */
export function raiseAlong(
  { first, task: earlier }: Pick<Arcs, 'first' | 'task'>,
  keys: Int32Array,
): void {
  for (let task = 0; task < keys.length; task++) {
    for (let arc = first[task]!, end = first[task + 1]!; arc < end; arc++) {
      const early = keys[earlier[arc]!]!;
      if (early > keys[task]!) keys[task] = early;
    }
  }
}

const COUNTED = 16;

/** Working room of `orderByKey`, made once. */
export class Scratch {
  readonly pairs: Float64Array;
  readonly counts: Int32Array;

  constructor(tasks: number) {
    this.pairs = new Float64Array(tasks);
    this.counts = new Int32Array(COUNTED * tasks + 2);
  }
}
