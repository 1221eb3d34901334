import type { Schedule } from '../schedule.ts';

export type SearchOptions = {
  /** Most schedules to make; `Infinity`: until stopped, proven, or nothing has been gained for long. */
  readonly effort: number;
  readonly seed: number;
  /** Seconds; nothing opens earlier. */
  readonly bound: number;
  /** Asked before each schedule but the first. */
  readonly shouldStop?: (() => boolean) | undefined;
  /** A schedule to take order and ways from before any rule. */
  readonly like?: Schedule | undefined;
  /** Told of each better schedule and each higher bound, in seconds, and how many schedules were made. */
  readonly report?: ((opening: number, bound: number, schedules: number) => void) | undefined;
};

export type Found = {
  readonly schedule: Schedule;
  /** Seconds. */
  readonly opening: number;
  /** Seconds; nothing opens earlier. */
  readonly bound: number;
  /** How many schedules were made: placements divided by tasks. */
  readonly schedules: number;
};
