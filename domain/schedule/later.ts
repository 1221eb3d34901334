import type { Compiled } from './compile.ts';
import { placeForward } from './forward.ts';
import type { HandedTask } from './handOver.ts';
import { Ordering } from './ordering.ts';
import { Profile } from './profile.ts';
import { copySchedule, emptySchedule, type Schedule } from './schedule.ts';

/** A schedule in which tasks that came later by their hand-overs are placed anew, each no earlier than it came. */
export class Later {
  readonly schedule: Schedule;
  readonly #compiled: Compiled;

  constructor(compiled: Compiled, schedule: Schedule) {
    this.schedule = emptySchedule(compiled);
    copySchedule(schedule, this.schedule);
    this.#compiled = { ...compiled, release: compiled.release.slice() };
  }

  /** True when some task starts later than in the schedule. Its start is then the least it has from now on. */
  than(tasks: readonly HandedTask[]): boolean {
    const { release } = this.#compiled;
    let first = Number.POSITIVE_INFINITY;
    for (const [number, { start }] of tasks.entries()) {
      if (start > this.schedule.start[number]!) {
        first = Math.min(first, start);
      }
    }
    for (const [number, { start }] of tasks.entries()) {
      // Only the first to be late: those after it may be so only because of it.
      if (start === first && start > this.schedule.start[number]!) {
        release[number] = Math.max(release[number]!, start);
      }
      this.schedule.start[number] = Math.max(start, this.schedule.start[number]!);
    }
    return first < Number.POSITIVE_INFINITY;
  }

  /** From now on the task starts no earlier than `from`, in seconds. */
  raise(number: number, from: number): void {
    const { release } = this.#compiled;
    release[number] = Math.max(release[number]!, from);
    this.schedule.start[number] = Math.max(this.schedule.start[number]!, from);
  }

  /**
   * Places all in the order of their starts, each in the way it has, or where that finds no time in any. False when
   * there is none in any way either.
   */
  place(): boolean {
    const { count, capacity, users, busy } = this.#compiled;
    const order = new Int32Array(count);
    const all = new Uint8Array(count).fill(1);
    new Ordering(this.#compiled).along(this.schedule.start, all, order);
    const profile = new Profile(capacity, users, busy);
    const placed = (pinned: Uint8Array) => {
      profile.clear(true);
      return placeForward(this.#compiled, profile, order, count, pinned, this.schedule);
    };
    return placed(all) || placed(new Uint8Array(count));
  }
}
