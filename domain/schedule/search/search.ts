import { energyBound } from '../bounds/energy.ts';
import type { Effort } from './decoder.ts';
import { Population } from './population.ts';
import type { Problem } from './problem.ts';
import { Random } from './random.ts';
import { Resolver, SMALL } from './resolver.ts';
import { type Individual, Sides } from './sides.ts';

export type SearchLimits = {
  readonly seed: number;
  /** Schedules to make at most, a schedule being one placement of each task; without it, until stopped. */
  readonly schedules?: number;
  /** Asked between schedules; the first one is always made. */
  readonly shouldStop?: () => boolean;
};

export type SearchNews = {
  /** Each shorter schedule, as found: starts by task. */
  readonly onSchedule?: (starts: Int32Array, length: number) => void;
  /** Each higher bound, as found. */
  readonly onBound?: (lower: number) => void;
};

/** A schedule found, in whole units of time, with the work it took. */
export type Found = {
  /** By task. */
  readonly starts: Int32Array;
  readonly length: number;
  /** No schedule is shorter; equal to `length` where the search ended by itself. */
  readonly lower: number;
  readonly schedules: number;
};

/**
 * Anytime search for a shortest schedule: a population of doubly justified schedules is bred, then stretches of the best
 * ones are re-solved exactly, in ever longer stints. Stops when the bound meets the schedule, the schedules are spent or
 * it is told to. The same seed and schedules give the same result as long as nothing stops it.
 */
export function search(problem: Problem, limits: SearchLimits, news: SearchNews = {}): Found {
  return new Search(problem, limits, news).run();
}

class Search {
  readonly #problem: Problem;
  readonly #limits: SearchLimits;
  readonly #news: SearchNews;
  readonly #effort: Effort = { placements: 0 };
  readonly #sides: Sides;
  readonly #random: Random;
  readonly #resolver: Resolver;
  #lower: number;
  #best: Individual | null = null;
  /** Different schedules of the best length. */
  #equals: Individual[] = [];

  constructor(problem: Problem, limits: SearchLimits, news: SearchNews) {
    this.#problem = problem;
    this.#limits = limits;
    this.#news = news;
    this.#sides = new Sides(problem, this.#effort);
    this.#random = new Random(limits.seed);
    this.#lower = energyBound(problem);
    news.onBound?.(this.#lower);
    const isOver = () => this.#isOver();
    this.#resolver = new Resolver(
      problem,
      this.#sides,
      this.#random,
      this.#effort,
      this.#lower,
      isOver,
    );
  }

  run(): Found {
    const { schedules } = this.#limits;
    let stint = schedules ?? FIRST_STINT;
    let until = 0;
    do {
      until += stint;
      this.#breed(until - stint * (1 - bredShare(stint, this.#problem.tasks)), stint);
      this.#resolve(until);
      stint *= 3;
    } while (!this.#isOver());
    const { starts, length } = this.#known();
    return { starts, length, lower: this.#lower, schedules: this.#schedules() };
  }

  /** Breeds a new population, with the best schedule so far among it, up to a number of schedules in all. */
  #breed(until: number, stint: number): void {
    const population = new Population(this.#sides, this.#random, (found) => this.#note(found));
    if (this.#best) population.members.push(this.#best);
    const isOver = () => this.#isOver() || (this.#best !== null && this.#schedules() >= until);
    const size = populationSize(stint);
    for (let drawn = 0; drawn < size && !isOver(); drawn++) population.sample();
    while (population.members.length > 1 && !isOver()) population.breed();
  }

  #resolve(until: number): void {
    // The exact part keeps a list for every bound and moment: beyond this many it would not fit.
    const isTooLarge = 2 * this.#problem.tasks * this.#known().length > MOST_LISTS;
    while (!isTooLarge && !this.#isOver() && this.#schedules() < until) {
      const base = this.#equals[this.#random.below(this.#equals.length)]!;
      const found = this.#resolver.turn(this.#known(), base);
      for (let made = found, turns = 2; made; made = turns-- > 0 ? this.#sides.turn(made) : null) {
        this.#note(made);
      }
      this.#raise(this.#resolver.lower);
    }
  }

  #known(): Individual {
    if (!this.#best) throw new Error('No schedule was made: every stint starts with one.');
    return this.#best;
  }

  #schedules(): number {
    return this.#effort.placements / Math.max(1, this.#problem.tasks);
  }

  #raise(lower: number): void {
    if (lower <= this.#lower) return;
    this.#lower = lower;
    this.#news.onBound?.(lower);
  }

  #isOver(): boolean {
    if (this.#best === null) return false;
    const { schedules = Number.POSITIVE_INFINITY, shouldStop } = this.#limits;
    return (
      this.#best.length <= this.#lower || this.#schedules() >= schedules || shouldStop?.() === true
    );
  }

  #note(found: Individual): void {
    const length = this.#best?.length ?? Number.POSITIVE_INFINITY;
    if (found.length > length) return;
    if (found.length === length && (found.side === 1 || this.#equals.length >= MOST_EQUALS)) return;
    const starts = this.#sides.forwardStarts(found).slice();
    const forward: Individual = { side: 0, starts, length: found.length };
    if (found.length < length) {
      this.#best = forward;
      this.#equals = [forward];
      this.#news.onSchedule?.(forward.starts, forward.length);
    } else if (
      !this.#equals.some((equal) => equal.starts.every((at, task) => at === starts[task]))
    ) {
      this.#equals.push(forward);
    }
  }
}

/** Longer stints can afford to stay varied for longer. Measured on generated instances, not derived. */
function populationSize(stint: number): number {
  return Math.round(Math.max(6, Math.min(600, 25 * (stint / 1000) ** 0.74)));
}

/** How much of a stint is bred; the rest re-solves. Measured on generated instances, not derived. */
function bredShare(stint: number, tasks: number): number {
  const isSmall = tasks <= SMALL;
  if (stint < 2500) return isSmall ? 0.25 : 0.4;
  if (isSmall) return stint < 8000 ? 0.4 : 0.1;
  return tasks <= MIDDLING ? 0.76 : 0.5;
}

/** What is larger than this gains more from windows than from breeding. Measured on generated instances. */
const MIDDLING = 75;

const FIRST_STINT = 1000;
const MOST_EQUALS = 30;
const MOST_LISTS = 16_000_000;
