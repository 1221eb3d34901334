import type { Compiled } from '../compile.ts';
import { finishOf, type Schedule } from '../schedule.ts';

/** What counts between schedules that open alike. */
export type Waiting = {
  /** Seconds that the people of all crews wait between their crew's first and last work, added up. */
  readonly idle: number;
  /** Tasks that follow another through a link and are done without anybody of the crews that did that one. */
  readonly changes: number;
};

/** Idle time and changes of crew in a schedule of the tasks with a 1 in `only`. */
export function waitingIn(compiled: Compiled, only: Uint8Array, schedule: Schedule): Waiting {
  const { count, crewCount, capacity, useHead, useOf, useAmount } = compiled;
  const { start, way } = schedule;
  const first = new Float64Array(crewCount).fill(Number.POSITIVE_INFINITY);
  const last = new Float64Array(crewCount);
  const worked = new Float64Array(crewCount);
  let changes = 0;
  for (let task = 0; task < count; task += 1) {
    if (only[task] === 0) {
      continue;
    }
    const w = way[task]!;
    const finish = finishOf(compiled, w, start[task]!);
    for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
      const crew = useOf[use]!;
      if (crew < crewCount) {
        first[crew] = Math.min(first[crew]!, start[task]!);
        last[crew] = Math.max(last[crew]!, finish);
        worked[crew]! += useAmount[use]! * (finish - start[task]!);
      }
    }
    changes += changesInto(compiled, only, way, task);
  }
  let idle = 0;
  for (let crew = 0; crew < crewCount; crew += 1) {
    if (worked[crew]! > 0) {
      idle += Math.max(0, capacity[crew]! * (last[crew]! - first[crew]!) - worked[crew]!);
    }
  }
  return { idle, changes };
}

function changesInto(compiled: Compiled, only: Uint8Array, way: Int32Array, task: number): number {
  const { beforeHead, before, useHead, useOf, crewCount } = compiled;
  const crewsOf = (w: number) =>
    Array.from(useOf.subarray(useHead[w]!, useHead[w + 1]!)).filter((of) => of < crewCount);
  const own = crewsOf(way[task]!);
  let changes = 0;
  for (let at = beforeHead[task]!; own.length > 0 && at < beforeHead[task + 1]!; at += 1) {
    const others = only[before[at]!] === 1 ? crewsOf(way[before[at]!]!) : [];
    changes += others.length > 0 && !others.some((crew) => own.includes(crew)) ? 1 : 0;
  }
  return changes;
}
