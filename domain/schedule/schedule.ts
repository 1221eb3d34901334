import type { Compiled } from './compile.ts';

/** When each task starts and in which of its ways, by number. Seconds. */
export type Schedule = { readonly start: Float64Array; readonly way: Int32Array };

/** An empty schedule with room for all tasks. */
export function emptySchedule(compiled: Compiled): Schedule {
  return {
    start: new Float64Array(compiled.count),
    way: Int32Array.from({ length: compiled.count }, (_, task) => compiled.wayHead[task]!),
  };
}

export function copySchedule(from: Schedule, to: Schedule): void {
  to.start.set(from.start);
  to.way.set(from.way);
}

/** When the last of the tasks that count for the opening finishes, in seconds. */
export function openingOf(compiled: Compiled, { start, way }: Schedule): number {
  let latest = compiled.settledOpening;
  for (let task = 0; task < compiled.count; task += 1) {
    if (compiled.goal[task] === 1) {
      latest = Math.max(latest, start[task]! + compiled.seconds[way[task]!]!);
    }
  }
  return latest;
}
