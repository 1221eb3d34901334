import type { Shape } from '../forecast/forecast.ts';
import type { Task } from '../tasks/task.ts';
import type { Load, Work, Zone } from '../tasks/work.ts';
import { crossingSeconds } from './crossing.ts';
import { type PaceOf, pacesOf } from './pace.ts';
import { secondsNotBefore } from './seconds.ts';
import { type StrengthStep, strengths } from './strength.ts';

/** How tasks are manned: with the crews of the work, or with as many people as anybody wants. */
export type Manning = {
  readonly work: Work;
  readonly shape: Shape;
  readonly crews: boolean;
  readonly zones: ReadonlyMap<string, Zone>;
  readonly loads: ReadonlyMap<string, Load>;
  readonly paceOf: PaceOf;
  /** How strong each crew is over time, in the order of `work.crews`. */
  readonly strengths: readonly (readonly StrengthStep[])[];
  /** Seconds that people take from bank to bank; 0 where none have to, or nobody counts people. */
  readonly crossing: number;
};

export function manningOf(work: Work, shape: Shape, crews: boolean): Manning {
  const zones = new Map(work.zones.map((zone) => [zone.id, zone]));
  const loads = new Map(work.loads.map((load) => [load.id, load]));
  const paceOf = pacesOf(work);
  const crossing = crews ? crossingSeconds(work, zones) : 0;
  return { work, shape, crews, zones, loads, paceOf, strengths: strengths(work), crossing };
}

/** When the last of a task's stores is in, seconds after the start of the build, and which load that is. */
export function lastLoad(manning: Manning, task: Task): { in: number; load: string | null } {
  let last: { in: number; load: string | null } = { in: 0, load: null };
  for (const id of task.loads) {
    const arrives = secondsNotBefore(manning.loads.get(id)?.arrives ?? 0);
    if (arrives > last.in) {
      last = { in: arrives, load: id };
    }
  }
  return last;
}
