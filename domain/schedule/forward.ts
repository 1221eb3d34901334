import type { Compiled } from './compile.ts';
import { startAt } from './pace.ts';
import type { Profile } from './profile.ts';
import { finishOf, type Schedule, sameWay, usualPeople } from './schedule.ts';

/**
 * Serial schedule generation (Kelley, 1963): takes the first `count` tasks of `order`, which must lead along the links,
 * and gives each the earliest start and the way in which it finishes first among what stands already in `profile`.
 * Of two ways that finish alike the one it had is kept. `pinned` says what a task may be given: any way, the one it had,
 * or any with the usual people. Tasks with a
 * fixed start come before all others, so that nobody takes their people. Writes into `schedule`; allocates nothing.
 * Returns false when a task finds no time within the hours of its crews, or a fixed one cannot start just then.
 */
export function placeForward(
  compiled: Compiled,
  profile: Profile,
  order: Int32Array,
  count: number,
  pinned: Uint8Array,
  schedule: Schedule,
): boolean {
  const { fixed, anyFixed } = compiled;
  for (let at = 0; anyFixed && at < count; at += 1) {
    const task = order[at]!;
    if (fixed[task] === 1 && !place(compiled, profile, task, 0, pinned, schedule)) {
      return false;
    }
  }
  for (let at = 0; at < count; at += 1) {
    const task = order[at]!;
    const ready = readyAt(compiled, schedule, task);
    if (fixed[task] === 1) {
      if (ready > schedule.start[task]!) {
        return false;
      }
    } else if (!place(compiled, profile, task, ready, pinned, schedule)) {
      return false;
    }
  }
  return true;
}

function place(
  compiled: Compiled,
  profile: Profile,
  task: number,
  ready: number,
  pinned: Uint8Array,
  { start, way }: Schedule,
): boolean {
  const { wayHead, usualEnd, withCare, useHead, useOf, useAmount, to } = compiled;
  const had = way[task]!;
  const may = pinned[task]!;
  let best = -1;
  let bestStart = 0;
  let bestFinish = Number.POSITIVE_INFINITY;
  const first = may === sameWay ? had : wayHead[task]!;
  const last =
    may === sameWay ? had + 1 : may === usualPeople ? usualEnd[task]! : wayHead[task + 1]!;
  for (let w = first; w < last; w += 1) {
    const begin =
      withCare[w] === 0
        ? earliestStart(compiled, profile, w, ready, bestFinish)
        : earliestWithCare(compiled, profile, w, ready, bestFinish);
    const finish = finishOf(compiled, w, begin);
    if (
      finish <= to[w]! &&
      (finish < bestFinish || (finish === bestFinish && w === had && best !== -1))
    ) {
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
  return true;
}

function readyAt(compiled: Compiled, { start, way }: Schedule, task: number): number {
  const { beforeHead, before, beforeFromStart, beforeWait } = compiled;
  let ready = compiled.release[task]!;
  for (let at = beforeHead[task]!; at < beforeHead[task + 1]!; at += 1) {
    const from = before[at]!;
    const begun = start[from]!;
    const counted = beforeFromStart[at] ? begun : finishOf(compiled, way[from]!, begun);
    const bound = counted + beforeWait[at]!;
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

/** The same with a pace of its own, by which it may take longer the later it begins, and with people who cross. */
function earliestWithCare(
  compiled: Compiled,
  profile: Profile,
  w: number,
  ready: number,
  limit: number,
): number {
  const { seconds, pace, from, useHead, useOf, useAmount, across, crossing } = compiled;
  const length = seconds[w]!;
  const own = pace[w]!;
  const first = useHead[w]!;
  const last = useHead[w + 1]!;
  let begin = Math.max(ready, from[w]!);
  if (own !== null) {
    begin = startAt(own, begin, length);
  }
  for (
    let use = first, agreed = 0;
    agreed < last - first;
    use = use + 1 === last ? first : use + 1
  ) {
    const finish = finishOf(compiled, w, begin);
    if (finish > limit || finish === Number.POSITIVE_INFINITY) {
      return Number.POSITIVE_INFINITY;
    }
    const of = useOf[use]!;
    const other = across[of]!;
    const moved =
      other === -1
        ? profile.freeAfter(of, begin, finish, useAmount[use]!)
        : profile.freeAcross(of, other, begin, finish, useAmount[use]!, crossing);
    if (moved > begin) {
      begin = own === null ? moved : startAt(own, moved, length);
      // Not even this one has agreed to where it ends now.
      agreed = 0;
    } else {
      agreed += 1;
    }
  }
  return begin;
}
