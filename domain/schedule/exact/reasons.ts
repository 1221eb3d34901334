import type { Problem } from '../search/problem.ts';
import type { Network } from './network.ts';
import type { Nogoods } from './nogoods.ts';
import { ARC, NOGOOD, PROFILE, type Trail } from './trail.ts';

/**
 * The facts that a dead end rests on, gathered one step back at a time: per bound the strongest value needed. Reasons are
 * worked out only when asked for, from the bounds as they stood when the step was taken.
 */
export class Reasons {
  /** Bounds with a need, possibly withdrawn since. */
  readonly listed: number[] = [];
  /** Needs that only became true at or after the position given to `begin`. */
  recent = 0;
  readonly #problem: Problem;
  readonly #durations: Int32Array;
  readonly #trail: Trail;
  readonly #nogoods: Nogoods;
  readonly #need: Int32Array;
  readonly #isListed: Uint8Array;
  #since = 0;
  readonly #running: Int32Array;
  readonly #rank: Int32Array;

  constructor(problem: Problem, { durations, bounds }: Network, trail: Trail, nogoods: Nogoods) {
    this.#problem = problem;
    this.#durations = durations;
    this.#trail = trail;
    this.#nogoods = nogoods;
    this.#need = new Int32Array(bounds.length).fill(NONE);
    this.#isListed = new Uint8Array(bounds.length);
    this.#running = new Int32Array(problem.tasks);
    this.#rank = new Int32Array(problem.tasks);
  }

  clear(): void {
    for (const bound of this.listed) {
      this.#need[bound] = NONE;
      this.#isListed[bound] = 0;
    }
    this.listed.length = 0;
    this.recent = 0;
    this.#since = 0x7fffffff;
  }

  /** From here on counts as recent what became true at or after this position of the trail. */
  begin(since: number): void {
    this.#since = since;
    this.recent = 0;
    for (const bound of this.listed) {
      if (this.#trail.entryOf(bound, this.#need[bound]!) >= since) this.recent += 1;
    }
  }

  /** The value a bound has to have, or NONE. */
  needOf(bound: number): number {
    return this.#need[bound]!;
  }

  require(bound: number, value: number): void {
    const had = this.#need[bound]!;
    if (had >= value) return;
    this.#need[bound] = value;
    if (this.#isListed[bound] === 0) {
      this.#isListed[bound] = 1;
      this.listed.push(bound);
    }
    if (this.#since === 0x7fffffff) return;
    const wasRecent = had !== NONE && this.#trail.entryOf(bound, had) >= this.#since;
    if (!wasRecent && this.#trail.entryOf(bound, value) >= this.#since) this.recent += 1;
  }

  /** Takes back a recent need that is about to be replaced by its reason. */
  withdraw(bound: number): void {
    this.#need[bound] = NONE;
    this.recent -= 1;
  }

  /** Needs what made (bound, value) true; bounds stand as they did just before. */
  explain(bound: number, value: number, kind: number, first: number, second: number): void {
    if (kind === ARC) {
      this.require(first, value - second);
    } else if (kind === PROFILE) {
      const task = bound >> 1;
      // The task would be at work at the moment in question unless it starts later, or ends earlier, still.
      this.require(bound, bound & 1 ? -first : first + 1 - this.#durations[task]!);
      this.explainUse(first, task);
    } else if (kind === NOGOOD) {
      const { facts, begins } = this.#nogoods;
      this.#nogoods.bump(first);
      for (let at = begins[first]!, end = begins[first + 1]!; at < end; at += 2) {
        if (facts[at] !== bound) this.require(facts[at]! ^ 1, 1 - facts[at + 1]!);
      }
    }
  }

  /** Needs enough tasks surely at work at a moment to leave too little for `task`; for anything, with -1. */
  explainUse(moment: number, task: number): void {
    const { resources, demands, capacities } = this.#problem;
    const running = this.#surelyAtWork(moment, task);
    let least = 0x7fffffff;
    let chosen: number[] = [];
    for (let resource = 0; resource < resources; resource++) {
      const own = task < 0 ? 0 : demands[task * resources + resource]!;
      if (task >= 0 && own === 0) continue;
      let over = own - capacities[resource]!;
      for (let at = 0; at < running; at++) {
        over += demands[this.#running[at]! * resources + resource]!;
      }
      if (over <= 0) continue;
      this.#sortByPrice(running, resource, moment);
      let price = 0;
      const kept: number[] = [];
      for (let at = 0; at < running; at++) {
        const other = this.#running[at]!;
        const demand = demands[other * resources + resource]!;
        if (demand < over) {
          over -= demand;
        } else if (demand > 0) {
          kept.push(other);
          price += this.#price(other, moment);
        }
      }
      if (price < least) {
        least = price;
        chosen = kept;
      }
    }
    for (const other of chosen) {
      this.require(2 * other, moment + 1 - this.#durations[other]!);
      this.require(2 * other + 1, -moment);
    }
  }

  #surelyAtWork(moment: number, except: number): number {
    const bounds = this.#trail.bounds;
    let count = 0;
    for (let task = 0; task < this.#problem.tasks; task++) {
      if (-bounds[2 * task + 1]! > moment || task === except) continue;
      if (moment < bounds[2 * task]! + this.#durations[task]!) this.#running[count++] = task;
    }
    return count;
  }

  /** Dear ones first, and of those small ones: what is not needed is left out from the front. */
  #sortByPrice(count: number, resource: number, moment: number): void {
    const { resources, demands } = this.#problem;
    const running = this.#running;
    const rank = this.#rank;
    for (let at = 0; at < count; at++) {
      const task = running[at]!;
      const own = demands[task * resources + resource]! - (this.#price(task, moment) << 24);
      let to = at;
      while (to > 0 && rank[to - 1]! > own) {
        running[to] = running[to - 1]!;
        rank[to] = rank[to - 1]!;
        to -= 1;
      }
      running[to] = task;
      rank[to] = own;
    }
  }

  /** Facts that a nogood would gain if it had to say that the task is at work at a moment. */
  #price(task: number, moment: number): number {
    const early = moment + 1 - this.#durations[task]!;
    let price = 0;
    if (this.#need[2 * task]! < early && !this.holdsAtRoot(2 * task, early)) price += 1;
    if (this.#need[2 * task + 1]! < -moment && !this.holdsAtRoot(2 * task + 1, -moment)) price += 1;
    return price;
  }

  holdsAtRoot(bound: number, value: number): boolean {
    const levels = this.#trail.levels;
    const entry = this.#trail.entryOf(bound, value);
    return entry < 0 || (levels.length > 0 && entry < levels[0]!);
  }

  /** Whether the other needs already force this one, made true by the entry, through its reason. */
  isImplied(bound: number, entry: number): boolean {
    const trail = this.#trail;
    const first = trail.first[entry]!;
    if (trail.kind[entry] === ARC) {
      return this.#isKnown(first, this.#need[bound]! - trail.second[entry]!, entry);
    }
    if (trail.kind[entry] !== NOGOOD) return false;
    const { facts, begins } = this.#nogoods;
    for (let at = begins[first]!, end = begins[first + 1]!; at < end; at += 2) {
      if (facts[at] === bound) continue;
      if (!this.#isKnown(facts[at]! ^ 1, 1 - facts[at + 1]!, entry)) return false;
    }
    return true;
  }

  /** Whether a fact holds at the root or follows from a need that was true before the entry. */
  #isKnown(bound: number, value: number, before: number): boolean {
    if (this.holdsAtRoot(bound, value)) return true;
    const need = this.#need[bound]!;
    return need >= value && this.#trail.entryOf(bound, need) < before;
  }
}

/** No value of the bound is needed. */
export const NONE = -0x40000000;
