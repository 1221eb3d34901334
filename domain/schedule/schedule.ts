import type { Compiled } from './compile.ts';
import { finishAt } from './pace.ts';

/** When each task starts and in which of its ways, by number. Seconds. */
export type Schedule = { readonly start: Float64Array; readonly way: Int32Array };

/** When way `w` is done that begins at `start`, in seconds: later than by its seconds alone in the dark and over rests. */
export function finishOf(compiled: Compiled, w: number, start: number): number {
  const pace = compiled.pace[w]!;
  const seconds = compiled.seconds[w]!;
  return pace === null ? start + seconds : finishAt(pace, start, seconds);
}

/** What a task may be given when it is placed: any way, the one it had, or any with the usual people. */
export const anyWay = 0;
export const sameWay = 1;
export const usualPeople = 2;

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
      latest = Math.max(latest, finishOf(compiled, way[task]!, start[task]!));
    }
  }
  return latest;
}
