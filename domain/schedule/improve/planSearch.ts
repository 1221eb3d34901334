import type { Compiled } from '../compile.ts';
import { priorityKeys } from '../priorities.ts';
import { anyWay, sameWay } from '../schedule.ts';
import { Random } from '../search/random.ts';
import { freeing } from './freeing.ts';
import { areAlike, type Individual, remember } from './individual.ts';
import { keepOrders } from './keepOrders.ts';
import { mayBeManned } from './manned/mannedProblem.ts';
import { bredInWork, mannedStint } from './manned/mannedStint.ts';
import { otherWays } from './otherWays.ts';
import { Placer } from './placer.ts';
import { Population } from './population.ts';
import { Raising } from './raising.ts';
import type { Found, SearchOptions } from './searchOptions.ts';
import { tidy, tidyingTries } from './tidy.ts';
import { usualAgain, usualTries } from './usualAgain.ts';
import { WindowRounds } from './windowRounds.ts';
import { withTheRest } from './withTheRest.ts';

/** Schedules of the first stint; each stint is so many times longer than the one before. */
const firstStint = 1000;
const longer = 3;

/**
 * Share of a stint in which windows are re-solved; before that schedules are bred. Windows keep the people that tasks
 * have: where all tasks may have others, it is the smaller share.
 */
const resolved = 0.7;
const resolvedOthers = 0.25;

/** Larger orders of work are only bred: a window is solved with all of them in sight. */
const mostToResolve = 600;

/** Windows in a row that gain nothing before the round ends. */
const patience = 60;

/** The bound is raised once so many schedules of a hundred tasks have been made; of more tasks more. */
const boundFrom = 1000;

/** Different schedules remembered that open as early as the best. */
const mostEquals = 20;

/** Rounds that gain nothing one after the other before a stint ends. */
const mostRounds = 60;

/** A search without a limit ends when so many schedules, and so many times those before the last gain, gained nothing. */
const vain = 60_000;
const vainTimes = 3;

/**
 * Anytime search over orders and ways: a schedule from each priority rule, a population bred from them, in the work
 * itself and on a plain network with ways, stretches of the best freed, then windows of the best schedules re-solved
 * exactly with the ways they have, and tried again with other ways; in ever longer stints. Between times it raises the
 * bound.
 */
export class PlanSearch {
  readonly #compiled: Compiled;
  readonly #options: SearchOptions;
  readonly #random: Random;
  readonly #placer: Placer;
  readonly #each: number;
  readonly #rules: readonly Float64Array[];
  readonly #isOverNow = () => this.#isOver();
  readonly #noteNow = (opening: number) => this.#note(opening);
  readonly #resolved: number;
  readonly #mayMan: boolean;
  readonly #windows: WindowRounds;
  #lower: number;
  #best: Individual | null = null;
  #equals: Individual[] = [];
  #gainedAt = 0;
  #raising: Raising | null = null;

  /** Places the tasks with a 1 in `only` first. */
  constructor(compiled: Compiled, options: SearchOptions, only: Uint8Array) {
    this.#compiled = compiled;
    this.#options = options;
    this.#random = new Random(options.seed);
    this.#placer = new Placer(compiled, only);
    this.#each = Math.max(
      1,
      only.reduce((sum, one) => sum + one, 0),
    );
    this.#rules = priorityKeys(compiled);
    this.#resolved = resolved - (resolved - resolvedOthers) * compiled.otherPeople;
    this.#mayMan = this.#mayResolve && mayBeManned(compiled);
    this.#windows = new WindowRounds(this.#placer, this.#random, this.#noteNow, this.#isOverNow);
    this.#lower = options.bound;
  }

  /** Null when no schedule was found. */
  run(): Found | null {
    this.#fromLike();
    let stint = firstStint;
    // Always the same stints, so that more effort goes on where less leaves off and is never worse.
    for (let until = stint; ; until += stint) {
      const began = until - stint;
      // The first stint is for a good plan at once, which the work itself gives soonest.
      const isManned = this.#mayMan && stint > firstStint;
      const resolvedNow = this.#mayResolve ? this.#resolved : 0;
      this.#breed(began + stint * (isManned ? bredInWork : 1 - resolvedNow), stint);
      if (isManned) {
        this.#man(began, stint);
      }
      this.#resolve(until);
      if (this.#isOver() || this.#best === null) {
        break;
      }
      stint *= longer;
      until = Math.max(until, this.#schedules);
    }
    if (this.#best === null) {
      return null;
    }
    const settled = this.#settled(this.#best);
    const schedule = withTheRest(this.#placer, settled, this.#rules);
    const { opening } = settled;
    return schedule && { schedule, opening, bound: this.#lower, schedules: this.#schedules };
  }

  /** What is left to choose once the opening is settled: orders kept, or else less idle time and fewer changes of crew. */
  #settled(best: Individual): Individual {
    const { like, keep, effort, shouldStop } = this.#options;
    const mayGoOn = () => shouldStop?.() !== true;
    if (like && keep) {
      return keepOrders(this.#placer, this.#random, best, like, mayGoOn);
    }
    const tidied = tidy(this.#placer, this.#random, best, tidyingTries(effort), mayGoOn);
    return usualAgain(this.#placer, tidied, usualTries(this.#compiled, effort), mayGoOn);
  }

  #fromLike(): void {
    const { like } = this.#options;
    if (like) {
      this.#placer.now.way.set(like.way);
      this.#placer.pinned.fill(sameWay);
      this.#note(this.#placer.forward(like.start));
    }
  }

  /** Breeds a new population, with the best schedule so far among it, up to a number of schedules in all. */
  #breed(until: number, schedules: number): void {
    const population = new Population(
      this.#placer,
      this.#random,
      (opening) => this.#note(opening),
      () => this.#best !== null && this.#isOver(),
    );
    const mayGoOn = () => this.#best === null || (!this.#isOver() && this.#schedules < until);
    for (const rule of this.#rules) {
      // Without a schedule none of the rules is left out: whoever asks wants a plan.
      if (this.#best === null || !this.#isOver()) {
        population.add(rule);
      }
    }
    for (const rule of this.#rules) {
      if (this.#best === null || (!this.#isOver() && this.#schedules < until)) {
        population.addFromEnd(rule);
      }
    }
    for (const rule of this.#compiled.otherPeople === 0 ? [] : this.#rules) {
      if (mayGoOn()) {
        population.add(rule, 1);
      }
    }
    const size = Math.max(6, Math.min(200, Math.round(Math.sqrt(schedules))));
    for (let drawn = 0; population.members.length < size && drawn < 2 * size; drawn += 1) {
      if (!mayGoOn()) {
        break;
      }
      population.addShaken(this.#rules[drawn % this.#rules.length]!);
    }
    if (this.#best && population.members.length > 1) {
      population.admit(this.#best);
    }
    while (population.members.length > 1 && mayGoOn()) {
      population.breed();
    }
  }

  #man(began: number, stint: number): void {
    if (this.#best === null || this.#isOver()) {
      return;
    }
    const host = {
      placer: this.#placer,
      random: this.#random,
      rules: this.#rules,
      equals: () => this.#equals,
      schedules: () => this.#schedules,
      isOver: this.#isOverNow,
      note: this.#noteNow,
      raiseBound: (schedules: number) => this.#raiseBound(schedules),
    };
    mannedStint(host, began, stint);
    if (!this.#isOver()) {
      this.#justify(this.#best);
    }
  }

  get #mayResolve(): boolean {
    return this.#compiled.count <= mostToResolve && this.#placer.only === this.#compiled.toOpen;
  }

  /** Re-solves windows of the best schedules, in coarser and finer units, and with other ways. */
  #resolve(until: number): void {
    let stuck = 0;
    while (this.#mayResolve && this.#best && !this.#isOver() && this.#schedules < until) {
      if (stuck > mostRounds) {
        return;
      }
      const before = this.#best.opening;
      const spent = this.#schedules;
      const base = this.#equals[this.#random.below(this.#equals.length)]!;
      if (this.#compiled.otherPeople > 0 && stuck % 2 === 0) {
        freeing(this.#placer, this.#random, base, patience, this.#noteNow, this.#isOverNow);
      } else {
        const from =
          stuck % 3 === 2 ? otherWays(this.#placer, this.#random, base, this.#noteNow) : base;
        const { opening } = this.#best;
        const made = from && this.#windows.round(from, opening, stuck % 3 === 1, patience);
        if (made && !this.#isOver()) {
          this.#justify(made);
        }
      }
      stuck = this.#best.opening < before ? 0 : stuck + 1;
      this.#raiseBound(this.#schedules - spent);
    }
  }

  /** Pushes a schedule to its end and back, with all ways open. */
  #justify({ start, way, opening }: Individual): void {
    const { now, pinned } = this.#placer;
    now.start.set(start);
    now.way.set(way);
    pinned.fill(anyWay);
    this.#placer.pushToEnd(opening);
    this.#note(this.#placer.forward(now.start));
  }

  #raiseBound(schedules: number): void {
    const { forBounds = this.#compiled, seed } = this.#options;
    const from = boundFrom * (this.#compiled.count / 100) ** 2;
    if (this.#schedules < from || !Raising.isFor(forBounds) || this.#isOver()) {
      return;
    }
    const { opening } = this.#best!;
    const known = forBounds === this.#compiled ? this.#best : null;
    this.#raising ??= new Raising(forBounds, this.#lower, opening, known, seed);
    this.#raising.run(schedules, () => this.#options.shouldStop?.() === true);
    const lower = Math.min(opening, this.#raising.lower);
    if (lower > this.#lower) {
      this.#lower = lower;
      this.#tell();
    }
  }

  get #schedules(): number {
    return this.#placer.placements / this.#each;
  }

  #isOver(): boolean {
    const { effort, shouldStop } = this.#options;
    const spent = this.#schedules;
    return (
      (this.#best !== null && this.#best.opening <= this.#lower) ||
      spent >= effort - tidyingTries(effort) - usualTries(this.#compiled, effort) ||
      (effort >= Number.MAX_SAFE_INTEGER && spent > vain + vainTimes * this.#gainedAt) ||
      shouldStop?.() === true
    );
  }

  #tell(): void {
    this.#options.report?.(this.#best!.opening, this.#lower, this.#schedules);
  }

  /** Remembers the schedule that stands when it is the best or as good. */
  #note(opening: number): void {
    const best = this.#best?.opening ?? Number.POSITIVE_INFINITY;
    if (opening > best || opening === Number.POSITIVE_INFINITY) {
      return;
    }
    if (opening < best) {
      this.#best = remember(this.#placer.now, opening);
      this.#equals = [this.#best];
      this.#gainedAt = this.#schedules;
      this.#tell();
    } else if (this.#equals.length < mostEquals) {
      const equal = remember(this.#placer.now, opening);
      if (!this.#equals.some((one) => areAlike(one, equal))) {
        this.#equals.push(equal);
      }
    }
  }
}
