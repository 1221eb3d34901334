import type { Nogoods } from './nogoods.ts';
import type { Propagation } from './propagation.ts';
import { NONE, type Reasons } from './reasons.ts';
import type { Trail } from './trail.ts';

/**
 * Turns a dead end into a nogood: replaces facts by their reasons, newest first, until one fact of the newest level is
 * left (the first unique implication point; Marques-Silva and Sakallah 1999), and goes back to where the nogood bites.
 */
export class Learning {
  /** How often, lately, each task had a part in a dead end. */
  readonly activity: Float64Array;
  readonly #trail: Trail;
  readonly #nogoods: Nogoods;
  readonly #reasons: Reasons;
  readonly #propagation: Propagation;
  #bump = 1;

  constructor(trail: Trail, nogoods: Nogoods, reasons: Reasons, propagation: Propagation) {
    this.activity = new Float64Array(trail.bounds.length >> 1);
    this.#trail = trail;
    this.#nogoods = nogoods;
    this.#reasons = reasons;
    this.#propagation = propagation;
  }

  /** Learns from the facts in the reasons. False when they hold at the root: nothing is left to search. */
  learn(): boolean {
    const level = this.#levelOfDeadEnd();
    if (level === 0) return false;
    const lead = this.#reduce(this.#trail.levels[level - 1]!);
    const facts = this.#facts(lead);
    const back = facts.length === 2 ? 0 : this.#levelOf(facts[2]! ^ 1, 1 - facts[3]!);
    this.#propagation.backTo(back);
    this.#age();
    if (facts.length === 2) return this.#propagation.decide(facts[0]!, facts[1]!);
    const number = this.#nogoods.add(facts);
    return this.#propagation.force(facts[0]!, facts[1]!, number);
  }

  #levelOf(bound: number, value: number): number {
    return this.#trail.levelOf(this.#trail.entryOf(bound, value));
  }

  #levelOfDeadEnd(): number {
    let level = 0;
    for (const bound of this.#reasons.listed) {
      level = Math.max(level, this.#levelOf(bound, this.#reasons.needOf(bound)));
    }
    return level;
  }

  /** Walks the trail back, up to the last fact needed from `since` on; returns its bound. */
  #reduce(since: number): number {
    const trail = this.#trail;
    const reasons = this.#reasons;
    reasons.begin(since);
    for (;;) {
      const at = trail.length - 1;
      const bound = trail.raised[at]!;
      const value = reasons.needOf(bound);
      if (value <= trail.from[at]!) {
        this.#propagation.undo();
        continue;
      }
      this.activity[bound >> 1]! += this.#bump;
      if (reasons.recent === 1) return bound;
      const kind = trail.kind[at]!;
      const first = trail.first[at]!;
      const second = trail.second[at]!;
      reasons.withdraw(bound);
      this.#propagation.undo();
      reasons.explain(bound, value, kind, first, second);
    }
  }

  /** The nogood: the opposite of the leading fact, then of the newest of the others, then the rest. */
  #facts(lead: number): number[] {
    const reasons = this.#reasons;
    const trail = this.#trail;
    const facts = [lead ^ 1, 1 - reasons.needOf(lead)];
    let newest = -1;
    for (const bound of reasons.listed) {
      const need = reasons.needOf(bound);
      if (need === NONE || bound === lead) continue;
      if (reasons.holdsAtRoot(bound, need)) continue;
      const entry = trail.entryOf(bound, need);
      if (reasons.isImplied(bound, entry)) continue;
      this.activity[bound >> 1]! += this.#bump;
      if (entry > newest) {
        newest = entry;
        facts.splice(2, 0, bound ^ 1, 1 - need);
      } else {
        facts.push(bound ^ 1, 1 - need);
      }
    }
    return facts;
  }

  /** Newer dead ends count more. */
  #age(): void {
    this.#nogoods.age();
    this.#bump /= 0.97;
    if (this.#bump < 1e100) return;
    this.#bump *= 1e-100;
    for (let task = 0; task < this.activity.length; task++) this.activity[task]! *= 1e-100;
  }
}
