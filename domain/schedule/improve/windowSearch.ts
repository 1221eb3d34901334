import { ExactSolver } from '../exact/solver.ts';
import type { Effort } from '../search/decoder.ts';
import { orderByKey, raiseAlong, Scratch } from '../search/orders.ts';
import type { Random } from '../search/random.ts';
import { type Individual as PlainIndividual, Sides } from '../search/sides.ts';
import { Windows } from '../search/windows.ts';
import type { Individual } from './individual.ts';
import type { PlainView } from './plainOf.ts';

/** Tasks open at once in a window at first, and by how much their number grows with each window that gains nothing. */
const openAtFirst = 30;
const growth = 1.02;

/** Dead ends after which the exact search gives a window up. */
const deadEnds = 100;

/**
 * Re-solves windows of a schedule exactly, one after the other, with the ways that its tasks have: what lies before a
 * window stands as early as it can, what lies after it as late.
 */
export class WindowSearch {
  readonly view: PlainView;
  readonly #effort: Effort;
  readonly #random: Random;
  readonly #isOver: () => boolean;
  readonly #sides: Sides;
  readonly #windows: Windows;
  readonly #key: Float64Array;
  #solver: ExactSolver | null = null;
  #open = openAtFirst;

  constructor(view: PlainView, effort: Effort, random: Random, isOver: () => boolean) {
    this.view = view;
    this.#effort = effort;
    this.#random = random;
    this.#isOver = isOver;
    this.#sides = new Sides(view.problem, effort);
    this.#windows = new Windows(this.#sides, random);
    this.#key = new Float64Array(view.numbers.reduce((most, task) => Math.max(most, task), 0) + 1);
  }

  /**
   * Goes on from the order of `base` until so many windows in a row have gained nothing. `onShorter` is told of each
   * shorter schedule: what to take the tasks of the work in order by, valid until it returns.
   */
  round(base: Individual, patience: number, onShorter: (key: Float64Array) => void): void {
    let now = this.#placed(base);
    this.#solver ??= new ExactSolver(
      this.view.problem,
      now.starts,
      now.length,
      this.#random,
      this.#effort,
      this.#isOver,
    );
    const solver = this.#solver;
    if (now.length < solver.length) {
      solver.improve(now.starts, now.length);
    }
    let closed = false;
    for (let idle = 0; idle < patience && !closed && !this.#isOver(); ) {
      const lead = this.#windows.choose(now, solver.length, Math.floor(this.#open), deadEnds);
      const outcome = solver.run(lead);
      closed = outcome === 'none shorter';
      if (outcome === 'shorter') {
        now = this.#justified({ side: 0, starts: solver.starts.slice(), length: solver.length });
        solver.improve(now.starts, now.length);
        onShorter(this.#keyOf(now));
        idle = 0;
      } else {
        idle += 1;
        this.#open = Math.min(this.view.problem.tasks, this.#open * growth);
      }
    }
  }

  #keyOf({ starts }: PlainIndividual): Float64Array {
    for (const [task, number] of this.view.numbers.entries()) {
      if (number >= 0) {
        this.#key[number] = starts[task]!;
      }
    }
    return this.#key;
  }

  /** The schedule that the plain problem makes of the order of `base`. */
  #placed(base: Individual): PlainIndividual {
    const { numbers } = this.view;
    const keys = Int32Array.from(numbers, (number) => (number < 0 ? -1 : base.start[number]!));
    raiseAlong(this.view.problem.before, keys);
    const order = new Int32Array(keys.length);
    orderByKey(keys, order, new Scratch(keys.length));
    return this.#sides.decode(0, order)!;
  }

  #justified(made: PlainIndividual): PlainIndividual {
    const back = this.#sides.turn(made);
    const forth = back && this.#sides.turn(back, made.length);
    return forth ?? made;
  }
}
