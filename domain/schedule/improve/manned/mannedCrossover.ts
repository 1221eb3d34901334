import { anyWay, sameWay, usualPeople } from '../../schedule.ts';
import type { Random } from '../../search/random.ts';
import type { MannedProblem } from './mannedProblem.ts';
import type { Manned } from './mannedSides.ts';

/** Least and most of the schedule, as shares, that a child takes whole from one parent. */
const shortest = 0.05;
const longest = 0.55;

/** Share of the tasks that a child is given in any way at all, at most. */
const strayWays = 0.1;

/** Of the tasks, those whose place in the order is moved a little. */
const moved = 0.05;

/**
 * Children that keep the stretch of time in which one parent uses its crews and zones most densely, with the ways it has
 * there, and take the rest, order and ways, from the other parent (dense windows: Valls, Ballestin and Quintanilla,
 * European Journal of Operational Research 185, 2008; Debels and Vanhoucke, Operations Research 55, 2007).
 */
export class MannedCrossover {
  readonly #problem: MannedProblem;
  readonly #random: Random;
  readonly #keys: Int32Array;
  readonly #open: Uint8Array;
  #load = new Float64Array(256);

  constructor(problem: MannedProblem, random: Random) {
    this.#problem = problem;
    this.#random = random;
    this.#keys = new Int32Array(problem.tasks);
    this.#open = new Uint8Array(problem.tasks);
  }

  /** Keys and openness are valid until the next call. */
  cross(dense: Manned, rest: Manned) {
    const { tasks, firstWay, endWay } = this.#problem;
    const [from, to] = this.#densest(dense);
    const keys = this.#keys;
    const open = this.#open.fill(sameWay);
    const ways = rest.ways.slice();
    const beyond = dense.length + rest.length;
    const stray = strayWays * this.#random.unit() ** 2;
    const free = this.#random.unit() ** 2;
    const other = this.#random.unit();
    for (let task = 0; task < tasks; task += 1) {
      const start = dense.starts[task]!;
      if (start >= from && start < to) {
        keys[task] = beyond + start;
        ways[task] = dense.ways[task]!;
      } else {
        keys[task] = rest.starts[task]! + (rest.starts[task]! < from ? 0 : 2 * beyond);
      }
      const choice = endWay[task]! - firstWay[task]!;
      if (choice > 1) {
        const draw = this.#random.unit();
        if (draw < stray) {
          ways[task] = firstWay[task]! + this.#random.below(choice);
        } else if (this.#random.unit() < free) {
          open[task] = this.#random.unit() < other ? anyWay : usualPeople;
        }
      }
      if (this.#random.unit() < moved) {
        keys[task]! += this.#random.below(1 + Math.round(rest.length / 30));
      }
    }
    this.#keepLinks(dense, from, to);
    return { keys, ways, open };
  }

  /** The stretch of a random length with the most use, from and to. */
  #densest({ starts, ways, length }: Manned): [number, number] {
    const { tasks, density, durations } = this.#problem;
    const share = shortest + this.#random.unit() * (longest - shortest);
    const span = Math.max(1, Math.floor(length * share));
    if (this.#load.length <= length) {
      this.#load = new Float64Array(2 * length);
    }
    // Use up to each moment, from the changes at starts and finishes.
    const load = this.#load.fill(0, 0, length + 1);
    for (let task = 0; task < tasks; task += 1) {
      const w = ways[task]!;
      load[starts[task]!]! += density[w]!;
      load[starts[task]! + durations[w]!]! -= density[w]!;
    }
    let rate = 0;
    let sum = 0;
    for (let moment = 0; moment <= length; moment += 1) {
      const change = load[moment]!;
      load[moment] = sum;
      rate += change;
      sum += rate;
    }
    let best = 0;
    for (let from = 1; from + span <= length; from += 1) {
      if (load[from + span]! - load[from]! > load[best + span]! - load[best]!) {
        best = from;
      }
    }
    return [best, best + span];
  }

  /** What the kept stretch needs comes before it. What needs it comes after by its links. */
  #keepLinks({ starts }: Manned, from: number, to: number): void {
    const { tasks, before } = this.#problem;
    const keys = this.#keys;
    for (let task = tasks - 1; task >= 0; task -= 1) {
      for (let at = before.first[task]!; at < before.first[task + 1]!; at += 1) {
        const early = before.task[at]!;
        const isKept = starts[early]! >= from && starts[early]! < to;
        if (!isKept && keys[early]! > keys[task]!) {
          keys[early] = keys[task]!;
        }
      }
    }
  }
}
