import type { Compiled } from '../compile.ts';
import type { Schedule } from '../schedule.ts';

export type SearchOptions = {
  /** Most schedules to make; from `Number.MAX_SAFE_INTEGER` on: until stopped, proven, or long without a gain. */
  readonly effort: number;
  readonly seed: number;
  /** Seconds; nothing opens earlier. */
  readonly bound: number;
  /** The work that bounds go by, where not all ways to man it are among those that plans are made of. */
  readonly forBounds?: Compiled | undefined;
  /** Asked before each schedule but the first. */
  readonly shouldStop?: (() => boolean) | undefined;
  /** A schedule to take order and ways from before any rule. */
  readonly like?: Schedule | undefined;
  /** Whether `like` are orders that people have: changing them then costs minutes. */
  readonly keep?: boolean | undefined;
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
