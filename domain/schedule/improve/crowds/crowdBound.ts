import type { Compiled } from '../../compile.ts';
import type { HeadsAndTails } from '../../headsAndTails.ts';
import { finishOf, type Schedule } from '../../schedule.ts';
import type { Crowd, Heaviest } from './heaviest.ts';

/** Steps of the search for a crowd: when any will do, when none was found so, and, a few times, when none may be heavier. */
const quickSteps = 2000;
const longSteps = 50_000;
const lastSteps = 1_500_000;

/** Steps of the programme between two looks at what can be claimed already. */
const between = 150;

/** Crowds that are looked at again before new ones are made. */
const mostKnown = 1000;

const small = 1e-7;

/**
 * The least time to an opening if work may be broken off and taken up again, and change ways, at any time: a linear
 * programme that shares out the time among crowds, tasks that can run at once, so that every task gets its time
 * (Mingozzi, Maniezzo, Ricciardelli, Bianco, Management Science 44, 1998). Crowds are made as they are wanted (column
 * generation).
 *
 * What it claims rests on weights of the tasks alone: all tasks together weigh so much, and the heaviest crowd carries
 * away no more than its weight in a unit of time. That holds for any weights, however they were come by.
 */
export class CrowdBound {
  /** Seconds; nothing opens earlier. */
  lower: number;
  /** Nothing more can be gained. */
  isDone = false;
  readonly #compiled: Compiled;
  readonly #heaviest: Heaviest;
  /** Seconds at which the first task can begin. */
  readonly #begin: number;
  readonly #tasks: readonly number[];
  /** Mean seconds of a task: what times are counted in, so that all numbers are of like size. */
  readonly #unit: number;
  readonly #size: number;
  readonly #rowOf: Int32Array;
  readonly #taskOf: Int32Array;
  /** The inverse of the basis, row by row, and the value of each basic variable. */
  readonly #inverse: Float64Array;
  readonly #value: Float64Array;
  /** Dual values: what each task's whole work is worth. */
  readonly #worth: Float64Array;
  readonly #column: Float64Array;
  readonly #weight: Float64Array;
  #known: (readonly number[])[] = [];
  #steps = 0;
  #lastTries = 2;

  /** Nothing opens before `lower`, in seconds. */
  constructor(compiled: Compiled, times: HeadsAndTails, heaviest: Heaviest, lower: number) {
    const { count, wayHead, seconds } = compiled;
    const { quickest, head, rest } = times;
    this.lower = lower;
    this.#compiled = compiled;
    this.#heaviest = heaviest;
    this.#tasks = Array.from({ length: count }, (_, task) => task).filter(
      (task) => rest[task]! >= 0 && quickest[task]! > 0,
    );
    this.#begin = this.#tasks.reduce((least, task) => Math.min(least, head[task]!), lower);
    const size = this.#tasks.length;
    this.#unit = this.#tasks.reduce((sum, task) => sum + quickest[task]!, 0) / Math.max(1, size);
    this.#size = size;
    this.#rowOf = new Int32Array(count).fill(-1);
    this.#taskOf = new Int32Array(seconds.length);
    this.#inverse = new Float64Array(size * size);
    this.#value = new Float64Array(size);
    this.#worth = new Float64Array(size);
    this.#column = new Float64Array(size);
    this.#weight = new Float64Array(seconds.length);
    // At first every task runs by itself.
    for (const [row, task] of this.#tasks.entries()) {
      const alone = quickest[task]! / this.#unit;
      this.#inverse[row * size + row] = alone;
      this.#value[row] = alone;
      this.#worth[row] = alone;
      this.#rowOf[task] = row;
      this.#taskOf.fill(task, wayHead[task]!, wayHead[task + 1]!);
    }
  }

  /** Goes so many steps on. */
  run(steps: number): void {
    for (let step = 0; step < steps && !this.isDone; step += 1) {
      this.#steps += 1;
      if (this.#steps % between === 0) {
        this.#claim(this.#crowd(quickSteps * 10));
      }
      this.#step();
    }
  }

  /** Starts from the crowds of a schedule: those that run whenever a task starts. */
  know({ start, way }: Schedule): void {
    const runs = this.#tasks.map((task) => {
      const w = way[task]!;
      return { w, from: start[task]!, to: finishOf(this.#compiled, w, start[task]!) };
    });
    for (const { from: moment } of runs) {
      const now = runs.filter(({ from, to }) => from <= moment && to > moment);
      this.#known.push(now.map(({ w }) => w));
    }
  }

  /** The heaviest of the crowds known. */
  #heaviestKnown(): Crowd {
    let ways: readonly number[] = [];
    let most = 0;
    for (const known of this.#known) {
      let weight = 0;
      for (const w of known) {
        const worth = this.#worth[this.#rowOf[this.#taskOf[w]!]!]!;
        weight += (worth * this.#unit) / this.#compiled.seconds[w]!;
      }
      if (weight > most) {
        most = weight;
        ways = known;
      }
    }
    return { ways, weight: most, heaviest: false };
  }

  /** Takes in one crowd that is worth more than its time. */
  #step(): void {
    let crowd = this.#heaviestKnown();
    if (crowd.weight <= 1 + small) {
      crowd = this.#crowd(quickSteps);
      if (crowd.weight <= 1 + small && !crowd.heaviest) {
        crowd = this.#crowd(longSteps);
      }
      if (crowd.weight <= 1 + small && !crowd.heaviest && this.#lastTries > 0) {
        this.#lastTries -= 1;
        crowd = this.#crowd(lastSteps);
      }
      this.#known.push(crowd.ways);
      if (this.#known.length > mostKnown) {
        this.#known = this.#known.slice(-mostKnown / 2);
      }
    }
    if (crowd.weight > 1 + small) {
      this.#takeIn(crowd);
    } else {
      this.#claim(crowd);
      this.isDone = true;
    }
  }

  /** The heaviest crowd as the tasks are weighed now, as far as so many steps find it. */
  #crowd(steps: number): Crowd {
    const { wayHead, seconds } = this.#compiled;
    this.#weight.fill(0);
    for (const [row, task] of this.#tasks.entries()) {
      const worth = this.#worth[row]!;
      for (let w = wayHead[task]!; worth > small && w < wayHead[task + 1]!; w += 1) {
        this.#weight[w] = (worth * this.#unit) / seconds[w]!;
      }
    }
    return this.#heaviest.find(this.#weight, steps);
  }

  /** Raises the bound to what the weights of now allow to claim, if no crowd is heavier than this one. */
  #claim(crowd: Crowd): void {
    if (!crowd.heaviest || crowd.weight < small) {
      return;
    }
    const all = this.#worth.reduce((sum, worth) => sum + Math.max(0, worth), 0);
    const seconds = this.#begin + (all / crowd.weight) * this.#unit;
    // A little less than reckoned: rounding must not claim a second that is not there.
    this.lower = Math.max(this.lower, Math.ceil(seconds * (1 - 1e-9) - 1e-3));
  }

  /** One exchange of the simplex method. */
  #takeIn(crowd: Crowd): void {
    const size = this.#size;
    const inverse = this.#inverse;
    const column = this.#column.fill(0);
    for (const w of crowd.ways) {
      const row = this.#rowOf[this.#taskOf[w]!]!;
      const factor = this.#unit / this.#compiled.seconds[w]!;
      for (let at = 0; at < size; at += 1) {
        column[at]! += inverse[at * size + row]! * factor;
      }
    }
    const out = this.#leaving(column);
    if (out === -1) {
      this.isDone = true;
      return;
    }
    const pivot = column[out]!;
    for (let at = 0; at < size; at += 1) {
      inverse[out * size + at]! /= pivot;
    }
    this.#value[out]! /= pivot;
    for (let row = 0; row < size; row += 1) {
      const factor = column[row]!;
      if (row === out || factor === 0) {
        continue;
      }
      for (let at = 0; at < size; at += 1) {
        inverse[row * size + at]! -= factor * inverse[out * size + at]!;
      }
      this.#value[row]! -= factor * this.#value[out]!;
    }
    const gain = crowd.weight - 1;
    for (let at = 0; at < size; at += 1) {
      this.#worth[at]! -= gain * inverse[out * size + at]!;
    }
  }

  /** The basic variable that reaches zero first; of several the one with the largest pivot. */
  #leaving(column: Float64Array): number {
    let out = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < this.#size; row += 1) {
      if (column[row]! <= small) {
        continue;
      }
      const ratio = Math.max(0, this.#value[row]!) / column[row]!;
      if (ratio < least - small || (ratio < least + small && column[row]! > column[out]!)) {
        out = row;
        least = Math.min(least, ratio);
      }
    }
    return out;
  }
}
