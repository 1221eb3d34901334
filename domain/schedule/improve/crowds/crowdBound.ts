import type { Compiled } from '../../compile.ts';
import type { HeadsAndTails } from '../../headsAndTails.ts';
import { finishOf, type Schedule } from '../../schedule.ts';
import type { Crowd, Heaviest } from './heaviest.ts';
import { type Stretch, stretches } from './stretches.ts';

/** Steps of the search for a crowd: when any will do, and when the heaviest is wanted. */
const quickSteps = 2000;
const mostSteps = 100_000;
const lastSteps = 3_000_000;

/** Into how many stretches the time after the start and before the opening is cut. */
const parts = 3;

/** Steps of the programme between two looks at what can be claimed already. */
const between = 150;

/** Crowds that are looked at again before new ones are made. */
const mostKnown = 1000;

const small = 1e-7;

/**
 * The least time to an opening if work may be broken off and taken up again, and change ways, at any time: a linear
 * programme that shares out the time among crowds, tasks that can run at once, so that every task gets its time
 * (Mingozzi, Maniezzo, Ricciardelli, Bianco, Management Science 44, 1998; that few tasks can run near the start and the
 * opening is taken in as Brucker and Knust do with time windows, European Journal of Operational Research 127, 2000).
 * Crowds are made as they are wanted (column generation).
 *
 * What it claims rests on weights of the tasks alone: all tasks together weigh so much, and the heaviest crowd of each
 * stretch carries away no more than its weight in a unit of time. That holds for any weights, however they were come by.
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
  /** The middle of the build first. */
  readonly #stretches: readonly Stretch[];
  readonly #tasks: readonly number[];
  /** Mean seconds of a task: what times are counted in, so that all numbers are of like size. */
  readonly #unit: number;
  readonly #size: number;
  readonly #rowOf: Int32Array;
  readonly #taskOf: Int32Array;
  /** The inverse of the basis, row by row, and the value of each basic variable. */
  readonly #inverse: Float64Array;
  readonly #value: Float64Array;
  /** Dual values: what a task's whole work is worth, then, with the sign turned, what a second of a stretch is. */
  readonly #worth: Float64Array;
  readonly #column: Float64Array;
  readonly #weight: Float64Array;
  #known: (readonly number[])[] = [];
  #at = 0;
  #steps = 0;

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
    this.#stretches = stretches(times, this.#tasks, (lower - this.#begin) / 2, parts);
    const tasks = this.#tasks.length;
    this.#unit = this.#tasks.reduce((sum, task) => sum + quickest[task]!, 0) / Math.max(1, tasks);
    const size = tasks + this.#stretches.length - 1;
    this.#size = size;
    this.#rowOf = new Int32Array(count).fill(-1);
    this.#taskOf = new Int32Array(seconds.length);
    this.#inverse = new Float64Array(size * size);
    this.#value = new Float64Array(size);
    this.#worth = new Float64Array(size);
    this.#column = new Float64Array(size);
    this.#weight = new Float64Array(seconds.length);
    for (let row = 0; row < size; row += 1) {
      const task = this.#tasks[row];
      // At first every task runs by itself in the middle, and the stretches before and after are unused.
      const first =
        task === undefined
          ? this.#stretches[row - tasks + 1]!.length! / this.#unit
          : quickest[task]! / this.#unit;
      this.#inverse[row * size + row] = task === undefined ? 1 : first;
      this.#value[row] = first;
      if (task !== undefined) {
        this.#worth[row] = first;
        this.#rowOf[task] = row;
        this.#taskOf.fill(task, wayHead[task]!, wayHead[task + 1]!);
      }
    }
  }

  /** Goes so many steps on. */
  run(steps: number): void {
    for (let step = 0; step < steps && !this.isDone; step += 1) {
      this.#steps += 1;
      if (this.#steps % between === 0) {
        this.#claim(quickSteps * 10);
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

  /** The heaviest of the crowds known, for the middle of the build. */
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
    const known = this.#heaviestKnown();
    if (known.weight > 1 + small) {
      this.#takeIn(known, 0, 1);
      return;
    }
    for (let tried = 0; tried < this.#stretches.length; tried += 1) {
      const part = this.#at % this.#stretches.length;
      const price = part === 0 ? 1 : -this.#worth[this.#tasks.length + part - 1]!;
      let crowd = this.#crowdIn(part, quickSteps);
      if (crowd.weight <= price + small && !crowd.heaviest) {
        crowd = this.#crowdIn(part, mostSteps);
      }
      if (crowd.weight > price + small) {
        this.#takeIn(crowd, part, price);
        this.#known.push(crowd.ways);
        if (this.#known.length > mostKnown) {
          this.#known = this.#known.slice(-mostKnown / 2);
        }
        return;
      }
      this.#at += 1;
    }
    this.#claim(lastSteps);
    this.isDone = true;
  }

  #crowdIn(part: number, steps: number): Crowd {
    const { wayHead, seconds } = this.#compiled;
    const { open } = this.#stretches[part]!;
    this.#weight.fill(0);
    for (const [row, task] of this.#tasks.entries()) {
      const worth = this.#worth[row]!;
      for (
        let w = wayHead[task]!;
        open[task] === 1 && worth > small && w < wayHead[task + 1]!;
        w += 1
      ) {
        this.#weight[w] = (worth * this.#unit) / seconds[w]!;
      }
    }
    return this.#heaviest.find(this.#weight, steps);
  }

  /** Raises the bound to what the weights of now allow to claim. */
  #claim(steps: number): void {
    let left = 0;
    for (let row = 0; row < this.#tasks.length; row += 1) {
      left += Math.max(0, this.#worth[row]!);
    }
    let time = 0;
    for (const [part, { length }] of this.#stretches.entries()) {
      const crowd = this.#crowdIn(part, steps);
      if (!crowd.heaviest || crowd.weight < small) {
        return;
      }
      if (length === null) {
        time = left / crowd.weight;
        left = 1 / crowd.weight;
      } else {
        time += (length / this.#unit) * (1 - crowd.weight * left);
      }
    }
    const seconds = this.#begin + time * this.#unit;
    // A little less than reckoned: rounding must not claim a second that is not there.
    this.lower = Math.max(this.lower, Math.ceil(seconds * (1 - 1e-9) - 1e-3));
  }

  /** One exchange of the simplex method. */
  #takeIn(crowd: Crowd, part: number, price: number): void {
    const size = this.#size;
    const inverse = this.#inverse;
    const column = this.#column.fill(0);
    const add = (row: number, factor: number) => {
      for (let at = 0; at < size; at += 1) {
        column[at]! += inverse[at * size + row]! * factor;
      }
    };
    for (const w of crowd.ways) {
      add(this.#rowOf[this.#taskOf[w]!]!, this.#unit / this.#compiled.seconds[w]!);
    }
    if (part > 0) {
      add(this.#tasks.length + part - 1, 1);
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
    const gain = crowd.weight - price;
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
