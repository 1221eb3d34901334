import { headsAndTails, type Problem } from './problem.ts';
import type { Random } from './random.ts';

/**
 * Draws orders of tasks: among those whose predecessors stand already, one with a longer path to the end is likelier
 * (regret-based biased random sampling over latest starts; Kolisch and Hartmann 1999).
 */
export class Sampler {
  readonly #problem: Problem;
  readonly #tails: Int32Array;
  readonly #random: Random;

  constructor(problem: Problem, random: Random) {
    this.#problem = problem;
    this.#tails = headsAndTails(problem).tails;
    this.#random = random;
  }

  draw(): Int32Array {
    const { tasks, before, after } = this.#problem;
    const order = new Int32Array(tasks);
    const waiting = new Int32Array(tasks);
    const open: number[] = [];
    const weights: number[] = [];
    for (let task = 0; task < tasks; task++) {
      waiting[task] = before.first[task + 1]! - before.first[task]!;
      if (waiting[task] === 0) open.push(task);
    }
    for (let at = 0; at < tasks; at++) {
      const chosen = this.#choose(open, weights);
      const task = open[chosen]!;
      open[chosen] = open[open.length - 1]!;
      open.pop();
      order[at] = task;
      for (let arc = after.first[task]!; arc < after.first[task + 1]!; arc++) {
        const next = after.task[arc]!;
        waiting[next]! -= 1;
        if (waiting[next] === 0) open.push(next);
      }
    }
    return order;
  }

  #choose(open: readonly number[], weights: number[]): number {
    let least = 0x7fffffff;
    for (const task of open) least = Math.min(least, this.#tails[task]!);
    let total = 0;
    for (let at = 0; at < open.length; at++) {
      const weight = (this.#tails[open[at]!]! - least + 1) ** SHARPNESS;
      weights[at] = weight;
      total += weight;
    }
    let draw = this.#random.unit() * total;
    let chosen = 0;
    while (chosen < open.length - 1) {
      draw -= weights[chosen]!;
      if (draw <= 0) break;
      chosen += 1;
    }
    return chosen;
  }
}

const SHARPNESS = 2;
