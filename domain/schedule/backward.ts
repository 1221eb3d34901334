import type { Compiled } from './compile.ts';
import { beginBy, finishAt, type Pace } from './pace.ts';
import type { Profile } from './profile.ts';
import { finishOf, type Schedule } from './schedule.ts';

/**
 * Serial generation from the end: takes the first `count` tasks of `order` (those with a 1 in `only`), which must lead
 * against the links, and gives each, in the way it has, the latest finish up to `end` that what stands already in `profile` leaves.
 * Stores, now and the hours of crews are kept only as far as they leave room: what comes out is a schedule to take an
 * order from, not a plan. Writes starts (which may be negative) into `schedule`; allocates nothing.
 */
export function placeBackward(
  compiled: Compiled,
  profile: Profile,
  order: Int32Array,
  count: number,
  only: Uint8Array,
  end: number,
  schedule: Schedule,
): void {
  const { seconds, pace, useHead, useOf, useAmount } = compiled;
  const { start, way } = schedule;
  for (let at = 0; at < count; at += 1) {
    const task = order[at]!;
    const w = way[task]!;
    const own = pace[w]!;
    const due = dueAt(compiled, schedule, task, only, end);
    const begin =
      own === null
        ? latestFinish(compiled, profile, w, due) - seconds[w]!
        : latestAtPace(compiled, profile, w, own, due);
    if (begin === Number.NEGATIVE_INFINITY) {
      start[task] = due - seconds[w]!;
      continue;
    }
    start[task] = begin;
    const finish = finishOf(compiled, w, begin);
    for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
      profile.hold(useOf[use]!, start[task]!, finish, useAmount[use]!);
    }
  }
}

function dueAt(
  compiled: Compiled,
  { start, way }: Schedule,
  task: number,
  only: Uint8Array,
  end: number,
): number {
  const { afterHead, after, afterFromStart, afterWait, seconds, to } = compiled;
  const length = seconds[way[task]!]!;
  let due = Math.min(end, to[way[task]!]!);
  for (let at = afterHead[task]!; at < afterHead[task + 1]!; at += 1) {
    const next = after[at]!;
    if (only[next] === 0) {
      continue;
    }
    // With a pace of its own it may take longer than its seconds: near enough for an order.
    const bound = start[next]! - afterWait[at]! + (afterFromStart[at] ? length : 0);
    if (bound < due) {
      due = bound;
    }
  }
  return due;
}

function latestFinish(compiled: Compiled, profile: Profile, w: number, due: number): number {
  const { seconds, useHead, useOf, useAmount } = compiled;
  const length = seconds[w]!;
  const first = useHead[w]!;
  const last = useHead[w + 1]!;
  let finish = due;
  for (let use = first, agreed = 0; agreed < last - first; ) {
    const moved = profile.latest(useOf[use]!, finish, length, useAmount[use]!);
    agreed = moved === finish ? agreed + 1 : 1;
    finish = moved;
    use = use + 1 === last ? first : use + 1;
  }
  return finish;
}

/** The latest start at a pace of its own with which it is done by `due`. */
function latestAtPace(
  compiled: Compiled,
  profile: Profile,
  w: number,
  pace: Pace,
  due: number,
): number {
  const { seconds, useHead, useOf, useAmount } = compiled;
  const length = seconds[w]!;
  const first = useHead[w]!;
  const last = useHead[w + 1]!;
  let begin = beginBy(pace, due, length);
  for (
    let use = first, agreed = 0;
    agreed < last - first;
    use = use + 1 === last ? first : use + 1
  ) {
    const finish = finishAt(pace, begin, length);
    const free = profile.freeBefore(useOf[use]!, begin, finish, useAmount[use]!);
    if (free === Number.NEGATIVE_INFINITY) {
      return free;
    }
    if (free < finish) {
      begin = beginBy(pace, free, length);
      agreed = 0;
    } else {
      agreed += 1;
    }
  }
  return begin;
}
