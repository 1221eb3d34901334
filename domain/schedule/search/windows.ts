import type { Lead } from '../exact/solver.ts';
import type { Random } from './random.ts';
import type { Individual, Sides } from './sides.ts';

/**
 * Chooses what to re-solve: everything before a moment stands as early as in a good schedule, everything after it as late
 * as a finish one unit earlier asks, and only the tasks around the moment are open.
 */
export class Windows {
  readonly #sides: Sides;
  readonly #random: Random;
  readonly #leanOn: Int32Array;
  readonly #distance: Float64Array;
  readonly #late = new WeakMap<Individual, Int32Array>();

  constructor(sides: Sides, random: Random) {
    this.#sides = sides;
    this.#random = random;
    const { tasks } = sides.problems[0];
    this.#leanOn = new Int32Array(tasks);
    this.#distance = new Float64Array(tasks);
  }

  /** A window of `open` tasks around a random moment of a forward schedule, to finish by `length` - 1. */
  choose(schedule: Individual, length: number, open: number, deadEnds: number): Lead {
    const { tasks, durations } = this.#sides.problems[0];
    const early = schedule.starts;
    const late = this.#latest(schedule);
    const shift = length - 1 - schedule.length;
    const moment = this.#random.unit() * schedule.length;
    for (let task = 0; task < tasks; task++) {
      const middle = (early[task]! + late[task]! + durations[task]!) / 2;
      this.#leanOn[task] = middle < moment ? early[task]! : late[task]! + shift;
      this.#distance[task] = Math.abs(middle - moment);
    }
    const distance = this.#distance;
    const farthest = Int32Array.from(early.keys()).sort((a, b) => distance[b]! - distance[a]!);
    const hold = farthest.subarray(0, Math.max(0, tasks - open));
    return { deadEnds, leanOn: this.#leanOn, hold };
  }

  /** Starts when everything is pushed as late as the order allows, the end where it was. */
  #latest(schedule: Individual): Int32Array {
    const known = this.#late.get(schedule);
    if (known) return known;
    const turned = this.#sides.turn(schedule);
    if (!turned) throw new Error('A schedule without a limit was given up.');
    const starts = this.#sides.forwardStarts(turned);
    const late = starts.map((start) => start + schedule.length - turned.length);
    this.#late.set(schedule, late);
    return late;
  }
}
