import type { Compiled } from '../compile.ts';
import { priorityKeys } from '../priorities.ts';
import { Random } from '../search/random.ts';
import { search } from '../search/search.ts';
import { type Individual, remember } from './individual.ts';
import { Placer } from './placer.ts';
import { type PlainView, plainOf } from './plainOf.ts';
import type { Found, SearchOptions } from './searchOptions.ts';
import { tidy, tidyingTries } from './tidy.ts';
import { withTheRest } from './withTheRest.ts';

/**
 * Searches work of which a plain problem says all there is to say: the plain search finds orders and bounds, each order
 * is placed in the work itself. Starts from the priority rules, so that there is a plan at once.
 */
export class PlainPlanSearch {
  readonly #compiled: Compiled;
  readonly #options: SearchOptions;
  readonly #view: PlainView;
  readonly #placer: Placer;
  readonly #each: number;
  readonly #key: Float64Array;
  #lower: number;
  #best: Individual | null = null;
  #schedules = 0;

  /** `unit` as `exactUnit` gives it. */
  constructor(compiled: Compiled, options: SearchOptions, unit: number) {
    this.#compiled = compiled;
    this.#options = options;
    this.#placer = new Placer(compiled, compiled.toOpen);
    this.#view = plainOf(compiled, this.#placer.now.way, unit);
    this.#each = Math.max(
      1,
      compiled.toOpen.reduce((sum, one) => sum + one, 0),
    );
    this.#key = new Float64Array(compiled.count);
    this.#lower = options.bound;
  }

  run(): Found | null {
    const rules = priorityKeys(this.#compiled);
    const { effort, seed } = this.#options;
    for (const rule of rules) {
      if (!this.#isOver()) {
        this.#place(rule);
      }
    }
    if (!this.#isOver()) {
      const spent = this.#schedules;
      search(
        this.#view.problem,
        {
          seed,
          ...(effort < Number.MAX_SAFE_INTEGER && {
            schedules: Math.max(1, effort - tidyingTries(effort) - spent),
          }),
          shouldStop: () => this.#isOver(),
        },
        {
          onSchedule: (starts) => this.#placeLike(starts),
          onBound: (lower) => this.#raise(this.#view.origin + lower * this.#view.unit),
        },
      );
    }
    if (this.#best === null) {
      return null;
    }
    const tries = tidyingTries(effort);
    const mayGoOn = () => this.#options.shouldStop?.() !== true;
    const settled = tidy(this.#placer, new Random(seed), this.#best, tries, mayGoOn);
    const schedule = withTheRest(this.#placer, settled, rules);
    const { opening } = settled;
    return schedule && { schedule, opening, bound: this.#lower, schedules: this.#schedules };
  }

  #placeLike(starts: Int32Array): void {
    for (const [task, number] of this.#view.numbers.entries()) {
      if (number >= 0) {
        this.#key[number] = starts[task]!;
      }
    }
    this.#place(this.#key);
  }

  #place(key: Float64Array): void {
    const opening = this.#placer.forward(key);
    this.#schedules = this.#placer.placements / this.#each;
    if (opening < (this.#best?.opening ?? Number.POSITIVE_INFINITY)) {
      this.#best = remember(this.#placer.now, opening);
      this.#tell();
    }
  }

  #raise(lower: number): void {
    if (lower > this.#lower) {
      this.#lower = Math.min(lower, this.#best!.opening);
      this.#tell();
    }
  }

  #tell(): void {
    this.#options.report?.(this.#best!.opening, this.#lower, this.#schedules);
  }

  #isOver(): boolean {
    const { effort, shouldStop } = this.#options;
    return (
      this.#best !== null &&
      (this.#best.opening <= this.#lower || this.#schedules >= effort || shouldStop?.() === true)
    );
  }
}
