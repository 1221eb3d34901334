import { search } from '../../search/search.ts';
import type { Relaxed } from './relaxedOf.ts';

/** Schedules of the first try; each try after it is given so many times more, up to the last. */
const firstTry = 2000;
const more = 3;
const mostTries = 4;

/**
 * How early a plan could open if every task were as quick as it can be with as few people as it can have. Where links,
 * keep-off moves and room, rather than person-minutes, hold the opening, that says more than what crowds can carry.
 */
export class RelaxedBound {
  /** Seconds; nothing opens earlier. */
  lower: number;
  /** Nothing more can be gained. */
  isDone = false;
  readonly #relaxed: Relaxed;
  readonly #seed: number;
  #credit = 0;
  #tries = 0;

  /** Nothing opens before `lower`, in seconds. */
  constructor(relaxed: Relaxed, lower: number, seed: number) {
    this.#relaxed = relaxed;
    this.#seed = seed;
    this.lower = lower;
  }

  /** May spend so many schedules more; spends them once they are enough for the next try. */
  run(schedules: number, shouldStop: () => boolean): void {
    this.#credit += schedules;
    const next = firstTry * more ** this.#tries;
    if (this.isDone || this.#credit < next) {
      return;
    }
    this.#credit -= next;
    this.#tries += 1;
    const { problem, unit, origin } = this.#relaxed;
    const found = search(problem, { seed: this.#seed, schedules: next, shouldStop });
    this.lower = Math.max(this.lower, origin + found.lower * unit);
    this.isDone = found.lower === found.length || this.#tries === mostTries;
  }
}
