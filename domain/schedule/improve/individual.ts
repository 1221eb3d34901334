import type { Schedule } from '../schedule.ts';

/** A schedule that a search remembers. */
export type Individual = Schedule & {
  /** Seconds. */
  readonly opening: number;
};

/** A copy of the schedule that stands, which the next one will overwrite. */
export function remember({ start, way }: Schedule, opening: number): Individual {
  return { start: start.slice(), way: way.slice(), opening };
}

export function areAlike(one: Individual, other: Individual): boolean {
  return (
    one.opening === other.opening &&
    one.start.every((start, task) => start === other.start[task]) &&
    one.way.every((way, task) => way === other.way[task])
  );
}
