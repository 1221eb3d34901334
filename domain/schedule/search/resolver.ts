import { ExactSolver } from '../exact/solver.ts';
import type { Effort } from './decoder.ts';
import type { Problem } from './problem.ts';
import type { Random } from './random.ts';
import type { Individual, Sides } from './sides.ts';
import { Windows } from './windows.ts';

/**
 * Re-solves stretches of good schedules exactly while the rest stands (large neighbourhood search; Shaw 1998), and now
 * and then the whole, which is what raises the bound. Whatever one turn learns, the next ones know.
 */
export class Resolver {
  /** No schedule is shorter. */
  lower: number;
  readonly #problem: Problem;
  readonly #random: Random;
  readonly #effort: Effort;
  readonly #isOver: () => boolean;
  readonly #windows: Windows;
  #solver: ExactSolver | null = null;
  #turns = 0;
  #wholes = 0;
  #open: number;

  constructor(
    problem: Problem,
    sides: Sides,
    random: Random,
    effort: Effort,
    lower: number,
    isOver: () => boolean,
  ) {
    this.#problem = problem;
    this.#random = random;
    this.#effort = effort;
    this.lower = lower;
    this.#isOver = isOver;
    this.#open = firstOpen(problem.tasks);
    this.#windows = new Windows(sides, random);
  }

  /**
   * Looks for a schedule shorter than `best` around `base`, one of the same length or longer. Both are forward schedules.
   * Returns it, or null.
   */
  turn(best: Individual, base: Individual): Individual | null {
    const solver = this.#solverFor(best);
    this.#turns += 1;
    const isClose = solver.lower >= best.length - 2;
    let outcome: ReturnType<ExactSolver['run']>;
    if (this.#turns % (isClose ? 2 : 6) === 0) {
      this.#wholes += 1;
      const deadEnds = DEAD_ENDS * luby(this.#wholes);
      outcome = solver.run({ deadEnds, leanOn: base.starts, hold: NOTHING });
    } else {
      const open = Math.floor(this.#open);
      outcome = solver.run(this.#windows.choose(base, best.length, open, DEAD_ENDS));
      this.#open = Math.min(this.#problem.tasks, this.#open * WIDER);
    }
    this.lower = Math.max(this.lower, outcome === 'none shorter' ? best.length : solver.lower);
    if (outcome !== 'shorter') return null;
    this.#open = firstOpen(this.#problem.tasks);
    return { side: 0, starts: solver.starts.slice(), length: solver.length };
  }

  #solverFor(best: Individual): ExactSolver {
    this.#solver ??= new ExactSolver(
      this.#problem,
      best.starts,
      best.length,
      this.#random,
      this.#effort,
      this.#isOver,
    );
    if (best.length < this.#solver.length) {
      this.#solver.improve(best.starts, best.length);
      this.#open = firstOpen(this.#problem.tasks);
    }
    return this.#solver;
  }
}

/** The series 1 1 2 1 1 2 4 ... of restart lengths, counted from 1 (Luby, Sinclair and Zuckerman 1993). */
function luby(turn: number): number {
  let power = 1;
  while (2 * power - 1 < turn) power *= 2;
  return 2 * power - 1 === turn ? power : luby(turn - power + 1);
}

/** What is as small as this is better searched through as a whole than bred. Measured on generated instances. */
export const SMALL = 40;

/** Tasks open in a window at first. */
function firstOpen(tasks: number): number {
  return tasks <= SMALL ? tasks : 20;
}

/** How much wider each window without a find makes the next. */
const WIDER = 1.02;

const DEAD_ENDS = 60;
const NOTHING = new Int32Array(0);
