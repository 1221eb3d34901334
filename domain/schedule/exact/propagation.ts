import type { Effort } from '../search/decoder.ts';
import type { Problem } from '../search/problem.ts';
import type { Network } from './network.ts';
import type { Nogoods } from './nogoods.ts';
import { Profile } from './profile.ts';
import type { Reasons } from './reasons.ts';
import { ARC, DECIDED, NOGOOD, PROFILE, type Trail } from './trail.ts';

/**
 * Follows bounds through arcs, nogoods and sure use until nothing moves or something cannot hold.
 *
 * Effort: one placement for every start decided, forced by a nogood, or moved in the profile of use. Following a link
 * is part of placing, as it is in serial generation.
 */
export class Propagation {
  readonly #problem: Problem;
  readonly #network: Network;
  readonly #trail: Trail;
  readonly #nogoods: Nogoods;
  readonly #reasons: Reasons;
  readonly #profile: Profile;
  readonly #effort: Effort;
  readonly #force: (bound: number, value: number, nogood: number) => boolean;
  /** Tasks with a bound that has risen since their place in the profile was looked at. */
  readonly #risen: Uint8Array;
  /** Entries before this position have been followed up. */
  #head = 0;

  constructor(
    problem: Problem,
    network: Network,
    trail: Trail,
    nogoods: Nogoods,
    reasons: Reasons,
    effort: Effort,
  ) {
    this.#problem = problem;
    this.#network = network;
    this.#trail = trail;
    this.#nogoods = nogoods;
    this.#reasons = reasons;
    this.#effort = effort;
    this.#profile = new Profile(problem, trail.bounds, -trail.bounds[2 * network.sink + 1]!);
    for (let task = 0; task < problem.tasks; task++) this.#profile.widen(task);
    this.#risen = new Uint8Array(problem.tasks).fill(1);
    this.#force = (bound, value, nogood) => {
      this.#effort.placements += 1;
      return this.#raise(bound, value, NOGOOD, nogood, 0);
    };
  }

  /** Raises a bound by decision, or for good at the root. False when it would pass its partner. */
  decide(bound: number, value: number): boolean {
    this.#effort.placements += 1;
    return this.#raise(bound, value, DECIDED, 0, 0);
  }

  /** Raises a bound because a nogood leaves nothing else. */
  force(bound: number, value: number, nogood: number): boolean {
    return this.#force(bound, value, nogood);
  }

  /** False, with the facts it rests on in the reasons, when a bound would pass its partner. */
  #raise(bound: number, value: number, kind: number, first: number, second: number): boolean {
    const trail = this.#trail;
    if (value <= trail.bounds[bound]!) return true;
    if (value > -trail.bounds[bound ^ 1]!) {
      this.#reasons.clear();
      this.#reasons.explain(bound, value, kind, first, second);
      this.#reasons.require(bound ^ 1, 1 - value);
      return false;
    }
    trail.push(bound, value, kind, first, second);
    return true;
  }

  /** Follows everything up. False, with the facts it rests on in the reasons, at a dead end. */
  run(): boolean {
    do {
      while (this.#head < this.#trail.length) {
        if (!this.#follow(this.#head++)) return false;
      }
      if (!this.#clearOfUse()) return false;
    } while (this.#head < this.#trail.length);
    return true;
  }

  #follow(entry: number): boolean {
    const { first, to, lag } = this.#network;
    const bound = this.#trail.raised[entry]!;
    const value = this.#trail.bounds[bound]!;
    for (let at = first[bound]!, end = first[bound + 1]!; at < end; at++) {
      if (!this.#raise(to[at]!, value + lag[at]!, ARC, bound, lag[at]!)) return false;
    }
    const task = bound >> 1;
    if (task < this.#problem.tasks) {
      this.#risen[task] = 1;
      const full = this.#profile.widen(task);
      if (full >= 0) {
        this.#reasons.clear();
        this.#reasons.explainUse(full, -1);
        return false;
      }
    }
    return (
      this.#nogoods.visit(bound, this.#trail.from[entry]!, this.#trail.value[entry]!, this.#force) <
      0
    );
  }

  /** Moves starts off moments where what is surely in use leaves too little. */
  #clearOfUse(): boolean {
    const bounds = this.#trail.bounds;
    const profile = this.#profile;
    const { changedFrom, changedTo } = profile;
    profile.resetChanged();
    for (let task = 0; task < this.#problem.tasks; task++) {
      let early = bounds[2 * task]!;
      let late = -bounds[2 * task + 1]!;
      if (early === late) continue;
      const duration = this.#network.durations[task]!;
      // A task that has not moved only needs a look where less has become free.
      let from = changedFrom;
      let to = changedTo;
      if (this.#risen[task] === 1) {
        from = 0;
        to = 0x3fffffff;
        this.#risen[task] = 0;
      } else if (early >= to || late + duration <= from) {
        continue;
      }
      let lookFrom = Math.max(early, from);
      let lookTo = Math.min(early + duration, late, to);
      let moved = 0;
      for (;;) {
        const moment = profile.lastShort(task, lookFrom, lookTo);
        if (moment < 0) break;
        moved = 1;
        if (!this.#raise(2 * task, moment + 1, PROFILE, moment, 0)) return false;
        early = moment + 1;
        lookFrom = early;
        lookTo = Math.min(early + duration, late);
      }
      this.#effort.placements += moved;
      moved = 0;
      lookFrom = Math.max(early + duration, late, from);
      lookTo = Math.min(late + duration, to);
      for (;;) {
        const moment = profile.firstShort(task, lookFrom, lookTo);
        if (moment < 0) break;
        moved = 1;
        if (!this.#raise(2 * task + 1, duration - moment, PROFILE, moment, 0)) return false;
        late = moment - duration;
        lookFrom = Math.max(early + duration, late);
        lookTo = late + duration;
      }
      this.#effort.placements += moved;
    }
    return true;
  }

  /** Takes the newest entry of the trail back. */
  undo(): void {
    const task = this.#trail.pop() >> 1;
    if (task < this.#problem.tasks) this.#profile.narrow(task);
    if (this.#head > this.#trail.length) this.#head = this.#trail.length;
  }

  /** Goes back to the end of a level; 0 is the root. */
  backTo(level: number): void {
    const levels = this.#trail.levels;
    if (levels.length <= level) return;
    while (this.#trail.length > levels[level]!) this.undo();
    levels.length = level;
    // Before the next level was begun everything had been followed up.
    this.#risen.fill(0);
    this.#profile.resetChanged();
  }

  /** At the root, with everything followed up: what stands holds for good, and useless nogoods go. */
  tidy(): void {
    this.#trail.settle();
    this.#head = 0;
    this.#nogoods.forget();
  }
}
