import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { placeBackward } from './backward.ts';
import type { Compiled } from './compile.ts';
import { placeForward } from './forward.ts';
import { Ordering } from './ordering.ts';
import { priorityKeys } from './priorities.ts';
import { Profile } from './profile.ts';
import { copySchedule, emptySchedule, finishOf, openingOf, type Schedule } from './schedule.ts';

export type SearchOptions = {
  /** Most schedules to make. */
  readonly effort: number;
  readonly seed: number;
  /** Seconds; a schedule that opens then cannot be bettered. */
  readonly bound: number;
  readonly shouldStop?: (() => boolean) | undefined;
  /** A schedule to take order and ways from before any rule. */
  readonly like?: Schedule | undefined;
  /** Told of each better schedule: its opening in seconds, and how many were made. */
  readonly report?: ((opening: number, schedules: number) => void) | undefined;
};

export type Found = {
  readonly schedule: Schedule;
  /** Seconds. */
  readonly opening: number;
  /** How many schedules were made. */
  readonly schedules: number;
};

/** How far random tries shake the best order: shares of its length. */
const shakes = [0.02, 0.05, 0.1, 0.2];

/** Most of the tasks, as a share, that a random try holds to any way at all, and to the way of the best plan. */
const mostAnyWays = 0.2;
const mostKeptWays = 0.6;

/**
 * Looks for the earliest opening: a schedule from each priority rule forward and backward, each pushed to the end and
 * back to the start (double justification: Valls, Ballestin, Quintanilla, European Journal of Operational Research
 * 165, 2005) as long as that gains; then the best order shaken at random and pushed again. What does not lead to the
 * opening is placed last, around what does. The same input gives the same schedule.
 * Null when no order was found that keeps to the hours of the crews.
 */
export function searchPlan(compiled: Compiled, options: SearchOptions): Found | null {
  const rules = priorityKeys(compiled);
  const found = new Search(compiled, options, compiled.toOpen).run(rules);
  if (found) {
    return found;
  }
  // What does not lead to the opening may need hours that what does has taken: then all is placed together.
  return new Search(compiled, options, new Uint8Array(compiled.count).fill(1)).run(rules);
}

class Search {
  readonly #compiled: Compiled;
  readonly #options: SearchOptions;
  /** 1 where a task is placed first. */
  readonly #only: Uint8Array;
  readonly #profile: Profile;
  readonly #ordering: Ordering;
  readonly #order: Int32Array;
  /** 1 where a task keeps the way it has. */
  readonly #pinned: Uint8Array;
  readonly #key: Float64Array;
  readonly #now: Schedule;
  readonly #best: Schedule;
  #bestOpening = Number.POSITIVE_INFINITY;
  #schedules = 0;

  constructor(compiled: Compiled, options: SearchOptions, only: Uint8Array) {
    this.#compiled = compiled;
    this.#options = options;
    this.#only = only;
    this.#profile = new Profile(compiled.capacity, compiled.users, compiled.busy);
    this.#ordering = new Ordering(compiled);
    this.#order = new Int32Array(compiled.count);
    this.#key = new Float64Array(compiled.count);
    this.#pinned = new Uint8Array(compiled.count);
    this.#now = emptySchedule(compiled);
    this.#best = emptySchedule(compiled);
  }

  run(rules: readonly Float64Array[]): Found | null {
    const { like } = this.#options;
    if (like) {
      this.#now.way.set(like.way);
      this.#pinned.fill(1);
      this.#forward(like.start);
      this.#pinned.fill(0);
    }
    for (const key of rules) {
      if (this.#mayGoOn()) {
        this.#justify(this.#forward(key));
      }
    }
    for (const key of rules) {
      if (this.#mayGoOn()) {
        this.#fromTheEnd(key);
      }
    }
    this.#shake(rules[0]!);
    return this.#withTheRest(rules);
  }

  /** Generates from the end by the rule turned round, then takes the order of the starts forward. */
  #fromTheEnd(key: Float64Array): void {
    for (let task = 0; task < key.length; task += 1) {
      this.#key[task] = -key[task]!;
    }
    this.#backward(0, false);
    this.#justify(this.#forward(this.#now.start));
  }

  /** Shakes the best order; while there is none that keeps to the crews' hours, that of `rule`. */
  #shake(rule: Float64Array): void {
    const random = xoroshiro128plus(this.#options.seed);
    for (let turn = 0; this.#mayGoOn(); turn += 1) {
      const found = this.#bestOpening < Number.POSITIVE_INFINITY;
      const base = found ? this.#best.start : rule;
      const reach = this.#spread(base) * shakes[turn % shakes.length]!;
      for (let task = 0; task < this.#compiled.count; task += 1) {
        this.#key[task] = base[task]! + reach * uniformFloat64(random);
      }
      this.#now.way.set(this.#best.way);
      this.#pinSome(random);
      this.#justify(this.#forward(this.#key));
    }
    this.#pinned.fill(0);
  }

  #spread(key: Float64Array): number {
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let task = 0; task < key.length; task += 1) {
      if (this.#only[task] === 1) {
        least = Math.min(least, key[task]!);
        most = Math.max(most, key[task]!);
      }
    }
    return most - least;
  }

  /** Finishing first is not always the best way to be manned: some tasks are held to their way, some to any way. */
  #pinSome(random: RandomGenerator): void {
    const { count, wayHead } = this.#compiled;
    // Squared: most tries change few.
    const anyWays = mostAnyWays * uniformFloat64(random) ** 2;
    const keptWays = mostKeptWays * uniformFloat64(random);
    for (let task = 0; task < count; task += 1) {
      const ways = wayHead[task + 1]! - wayHead[task]!;
      const draw = ways > 1 ? uniformFloat64(random) : 1;
      this.#pinned[task] = draw < keptWays + anyWays ? 1 : 0;
      if (draw < anyWays) {
        this.#now.way[task] = wayHead[task]! + uniformInt(random, 0, ways - 1);
      }
    }
  }

  /** Places what is left around the best schedule, in the order of some rule. */
  #withTheRest(rules: readonly Float64Array[]): Found | null {
    if (this.#bestOpening === Number.POSITIVE_INFINITY) {
      return null;
    }
    const rest = this.#only.map((first) => 1 - first);
    for (const key of rules) {
      copySchedule(this.#best, this.#now);
      this.#profile.clear(true);
      this.#holdBest();
      const count = this.#ordering.along(key, rest, this.#order);
      if (
        placeForward(this.#compiled, this.#profile, this.#order, count, this.#pinned, this.#now)
      ) {
        const schedule = this.#now;
        return { schedule, opening: this.#bestOpening, schedules: this.#schedules };
      }
    }
    return null;
  }

  #holdBest(): void {
    const { count, useHead, useOf, useAmount } = this.#compiled;
    for (let task = 0; task < count; task += 1) {
      const w = this.#best.way[task]!;
      const start = this.#best.start[task]!;
      const finish = finishOf(this.#compiled, w, start);
      for (let use = useHead[w]!; this.#only[task] === 1 && use < useHead[w + 1]!; use += 1) {
        this.#profile.hold(useOf[use]!, start, finish, useAmount[use]!);
      }
    }
  }

  #mayGoOn(): boolean {
    const { effort, bound, shouldStop } = this.#options;
    // The first schedule is always made: whoever asks wants a plan.
    return (
      this.#schedules === 0 ||
      (this.#schedules < effort && this.#bestOpening > bound && !shouldStop?.())
    );
  }

  /** Pushes the present schedule to its end and back to the start as long as it opens earlier each time. */
  #justify(opening: number): void {
    let before = Number.POSITIVE_INFINITY;
    let now = opening;
    while (now < before && this.#mayGoOn()) {
      before = now;
      const { start, way } = this.#now;
      for (let task = 0; task < start.length; task += 1) {
        this.#key[task] = -finishOf(this.#compiled, way[task]!, start[task]!);
      }
      this.#backward(now, true);
      now = this.#forward(this.#now.start);
    }
  }

  /** Makes a schedule in the order of `key` and keeps it when it is the best. Returns its opening, or Infinity. */
  #forward(key: Float64Array): number {
    this.#schedules += 1;
    const count = this.#ordering.along(key, this.#only, this.#order);
    this.#profile.clear(true);
    if (!placeForward(this.#compiled, this.#profile, this.#order, count, this.#pinned, this.#now)) {
      return Number.POSITIVE_INFINITY;
    }
    const opening = openingOf(this.#compiled, this.#now);
    if (opening < this.#bestOpening) {
      this.#bestOpening = opening;
      copySchedule(this.#now, this.#best);
      this.#options.report?.(opening, this.#schedules);
    }
    return opening;
  }

  #backward(end: number, withBusy: boolean): void {
    this.#schedules += 1;
    const count = this.#ordering.against(this.#key, this.#only, this.#order);
    this.#profile.clear(withBusy);
    placeBackward(this.#compiled, this.#profile, this.#order, count, this.#only, end, this.#now);
  }
}
