import { placeBackward } from '../backward.ts';
import type { Compiled } from '../compile.ts';
import { placeForward } from '../forward.ts';
import { Ordering } from '../ordering.ts';
import { Profile } from '../profile.ts';
import { emptySchedule, finishOf, openingOf, type Schedule, usualPeople } from '../schedule.ts';

/**
 * Makes schedules of some of the tasks and counts the work honestly: one placement is one task given a start, forward or
 * backward. Reads and writes the schedule it holds; `Infinity` stands for the opening of one that was not found.
 */
export class Placer {
  readonly compiled: Compiled;
  /** The schedule last made. Its ways are what the next one starts from. */
  readonly now: Schedule;
  /** What a task may be given: any way, the one it has, or any with the usual people. */
  readonly pinned: Uint8Array;
  /** 1 where a task is placed. */
  readonly only: Uint8Array;
  placements = 0;
  readonly #profile: Profile;
  readonly #ordering: Ordering;
  readonly #order: Int32Array;
  readonly #key: Float64Array;

  constructor(compiled: Compiled, only: Uint8Array) {
    this.compiled = compiled;
    this.only = only;
    this.now = emptySchedule(compiled);
    this.pinned = new Uint8Array(compiled.count).fill(usualPeople);
    this.#profile = new Profile(compiled.capacity, compiled.users, compiled.busy);
    this.#ordering = new Ordering(compiled);
    this.#order = new Int32Array(compiled.count);
    this.#key = new Float64Array(compiled.count);
  }

  /** Places in the order of `key`, each task as early as it can be. Returns the opening in seconds. */
  forward(key: Float64Array): number {
    const count = this.#ordering.along(key, this.only, this.#order);
    this.placements += count;
    this.#profile.clear(true);
    return placeForward(this.compiled, this.#profile, this.#order, count, this.pinned, this.now)
      ? openingOf(this.compiled, this.now)
      : Number.POSITIVE_INFINITY;
  }

  /** Pushes the schedule that stands towards `end`, the last to finish first. */
  pushToEnd(end: number): void {
    const { start, way } = this.now;
    for (let task = 0; task < start.length; task += 1) {
      this.#key[task] = -finishOf(this.compiled, way[task]!, start[task]!);
    }
    this.#backward(this.#key, end, true);
  }

  /** Makes a schedule from the end, those with the greatest key first, to take an order from. */
  fromEnd(key: Float64Array): void {
    for (let task = 0; task < key.length; task += 1) {
      this.#key[task] = -key[task]!;
    }
    this.#backward(this.#key, 0, false);
  }

  #backward(key: Float64Array, end: number, withBusy: boolean): void {
    const count = this.#ordering.against(key, this.only, this.#order);
    this.placements += count;
    this.#profile.clear(withBusy);
    placeBackward(this.compiled, this.#profile, this.#order, count, this.only, end, this.now);
  }

  /** Places the tasks of `rest` around those of `only`, which stand as in `now`. False when one finds no time. */
  addRest(rest: Uint8Array, key: Float64Array): boolean {
    const { count, useHead, useOf, useAmount } = this.compiled;
    this.#profile.clear(true);
    for (let task = 0; task < count; task += 1) {
      const w = this.now.way[task]!;
      const start = this.now.start[task]!;
      const finish = finishOf(this.compiled, w, start);
      for (let use = useHead[w]!; this.only[task] === 1 && use < useHead[w + 1]!; use += 1) {
        this.#profile.hold(useOf[use]!, start, finish, useAmount[use]!);
      }
    }
    const placed = this.#ordering.along(key, rest, this.#order);
    this.placements += placed;
    return placeForward(this.compiled, this.#profile, this.#order, placed, this.pinned, this.now);
  }
}
