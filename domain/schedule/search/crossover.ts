import { orderByKey, raiseAlong, Scratch } from './orders.ts';
import type { Problem } from './problem.ts';
import type { Random } from './random.ts';
import type { Individual, Sides } from './sides.ts';

/**
 * Children that keep the stretch of time in which one parent uses its crews most densely and take the rest of the order
 * from the other parent (Valls, Ballestin and Quintanilla 2008; Debels and Vanhoucke 2007).
 */
export class Crossover {
  readonly #sides: Sides;
  readonly #random: Random;
  readonly #density: Float64Array;
  readonly #keys: Int32Array;
  readonly #order: Int32Array;
  readonly #scratch: Scratch;
  #load = new Float64Array(256);

  constructor(sides: Sides, random: Random) {
    this.#sides = sides;
    this.#random = random;
    const problem = sides.problems[0];
    this.#density = new Float64Array(problem.tasks);
    for (let task = 0; task < problem.tasks; task++) {
      for (let resource = 0; resource < problem.resources; resource++) {
        const capacity = problem.capacities[resource]!;
        const units = problem.demands[task * problem.resources + resource]!;
        if (units > 0) this.#density[task]! += units / capacity;
      }
    }
    this.#keys = new Int32Array(problem.tasks);
    this.#order = new Int32Array(problem.tasks);
    this.#scratch = new Scratch(problem.tasks);
  }

  /** The order of a child: valid until the next call. Both parents stand on the same side. */
  cross(dense: Individual, rest: Individual): Int32Array {
    const problem = this.#sides.problems[dense.side];
    const [from, to] = this.#densest(dense, problem);
    const keys = this.#keys;
    const kept = dense.length + rest.length;
    for (let task = 0; task < problem.tasks; task++) {
      const start = dense.starts[task]!;
      if (start >= from && start < to) keys[task] = kept + start;
      else keys[task] = rest.starts[task]! + (rest.starts[task]! < from ? 0 : 2 * kept);
    }
    this.#keepLinks(problem, (task) => dense.starts[task]! >= from && dense.starts[task]! < to);
    orderByKey(keys, this.#order, this.#scratch);
    this.#mutate(problem);
    return this.#order;
  }

  /** The stretch of a random length with the most use, from and to. */
  #densest({ side, starts, length }: Individual, problem: Problem): [number, number] {
    const span = Math.max(
      1,
      Math.floor(length * (SHORTEST + this.#random.unit() * (LONGEST - SHORTEST))),
    );
    if (this.#load.length <= length) this.#load = new Float64Array(2 * length);
    // Use up to each moment, from the changes at starts and finishes.
    const load = this.#load.fill(0, 0, length + 1);
    const tasks = problem.tasks;
    for (let task = 0; task < tasks; task++) {
      const density = this.#density[side === 0 ? task : tasks - 1 - task]!;
      load[starts[task]!]! += density;
      load[starts[task]! + problem.durations[task]!]! -= density;
    }
    let rate = 0;
    let sum = 0;
    for (let moment = 0; moment <= length; moment++) {
      const change = load[moment]!;
      load[moment] = sum;
      rate += change;
      sum += rate;
    }
    let best = 0;
    for (let from = 1; from + span <= length; from++) {
      if (load[from + span]! - load[from]! > load[best + span]! - load[best]!) best = from;
    }
    return [best, best + span];
  }

  /** Makes keys rise along links: what the kept stretch needs comes before it, what needs it after. */
  #keepLinks({ tasks, before, after }: Problem, isKept: (task: number) => boolean): void {
    const keys = this.#keys;
    for (let task = tasks - 1; task >= 0; task--) {
      if (isKept(task)) continue;
      for (let arc = after.first[task]!; arc < after.first[task + 1]!; arc++) {
        keys[task] = Math.min(keys[task]!, keys[after.task[arc]!]!);
      }
    }
    raiseAlong(before, keys);
  }

  /** Swaps a neighbour here and there. */
  #mutate({ tasks, after }: Problem): void {
    const order = this.#order;
    for (let at = 0; at + 1 < tasks; at++) {
      if (this.#random.unit() >= SWAPS) continue;
      const early = order[at]!;
      const late = order[at + 1]!;
      if (after.task.subarray(after.first[early]!, after.first[early + 1]!).includes(late))
        continue;
      order[at] = late;
      order[at + 1] = early;
    }
  }
}

const SWAPS = 0.05;

/** Stretch that is kept, as a share of the schedule. Measured on generated instances, not derived. */
const SHORTEST = 0.05;
const LONGEST = 0.55;
