import type { Compiled } from './compile.ts';
import type { Profile } from './profile.ts';
import type { Schedule } from './schedule.ts';

/**
 * Serial schedule generation (Kelley, 1963): takes the first `count` tasks of `order`, which must lead along the links,
 * and gives each the earliest start and the way in which it finishes first among what stands already in `profile`.
 * Of two ways that finish alike the one it had is kept; a task with a 1 in `pinned` keeps the way it had. Writes into `schedule`; allocates nothing.
 * Returns false when a task finds no time within the hours of its crews.
 */
export function placeForward(
  compiled: Compiled,
  profile: Profile,
  order: Int32Array,
  count: number,
  pinned: Uint8Array,
  schedule: Schedule,
): boolean {
  const { wayHead, seconds, useHead, useOf, useAmount, to } = compiled;
  const { start, way } = schedule;
  for (let at = 0; at < count; at += 1) {
    const task = order[at]!;
    const ready = readyAt(compiled, schedule, task);
    const had = way[task]!;
    let best = -1;
    let bestStart = 0;
    let bestFinish = Number.POSITIVE_INFINITY;
    const first = pinned[task] === 1 ? had : wayHead[task]!;
    const last = pinned[task] === 1 ? had + 1 : wayHead[task + 1]!;
    for (let w = first; w < last; w += 1) {
      const begin = earliestStart(compiled, profile, w, ready, bestFinish);
      const finish = begin + seconds[w]!;
      if (finish <= to[w]! && (finish < bestFinish || (finish === bestFinish && w === had))) {
        best = w;
        bestStart = begin;
        bestFinish = finish;
      }
    }
    if (best === -1) {
      return false;
    }
    start[task] = bestStart;
    way[task] = best;
    for (let use = useHead[best]!; use < useHead[best + 1]!; use += 1) {
      profile.hold(useOf[use]!, bestStart, bestFinish, useAmount[use]!);
    }
  }
  return true;
}

function readyAt(compiled: Compiled, { start, way }: Schedule, task: number): number {
  const { beforeHead, before, beforeFromStart, beforeWait, seconds } = compiled;
  let ready = compiled.release[task]!;
  for (let at = beforeHead[task]!; at < beforeHead[task + 1]!; at += 1) {
    const from = before[at]!;
    const length = beforeFromStart[at] ? 0 : seconds[way[from]!]!;
    const bound = start[from]! + length + beforeWait[at]!;
    if (bound > ready) {
      ready = bound;
    }
  }
  return ready;
}

/** The earliest start of way `w` from `ready` on that all its resources leave; given up once it passes `limit`. */
function earliestStart(
  compiled: Compiled,
  profile: Profile,
  w: number,
  ready: number,
  limit: number,
): number {
  const { seconds, from, useHead, useOf, useAmount } = compiled;
  const length = seconds[w]!;
  let begin = Math.max(ready, from[w]!);
  const first = useHead[w]!;
  const last = useHead[w + 1]!;
  // Every resource must agree to one and the same start: go round until none has moved it.
  for (let use = first, agreed = 0; agreed < last - first && begin + length <= limit; ) {
    const moved = profile.earliest(useOf[use]!, begin, length, useAmount[use]!);
    agreed = moved === begin ? agreed + 1 : 1;
    begin = moved;
    use = use + 1 === last ? first : use + 1;
  }
  return begin;
}
