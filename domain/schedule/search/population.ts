import { Crossover } from './crossover.ts';
import type { Random } from './random.ts';
import { Sampler } from './sampling.ts';
import type { Individual, Side, Sides } from './sides.ts';

/**
 * A steady population of schedules, each doubly justified. A child takes the place of one of the longest when it is no
 * longer than that and not there yet.
 */
export class Population {
  readonly members: Individual[] = [];
  readonly #sides: Sides;
  readonly #random: Random;
  readonly #samplers: readonly [Sampler, Sampler];
  readonly #crossover: Crossover;
  readonly #report: (found: Individual) => void;

  /** `report` is told of every whole schedule made. */
  constructor(sides: Sides, random: Random, report: (found: Individual) => void) {
    this.#sides = sides;
    this.#random = random;
    this.#samplers = [
      new Sampler(sides.problems[0], random),
      new Sampler(sides.problems[1], random),
    ];
    this.#crossover = new Crossover(sides, random);
    this.#report = report;
  }

  /** Adds a sampled schedule, drawn from one of the two ends. */
  sample(): void {
    const side = this.#random.below(2) as Side;
    let made = this.#sides.decode(side, this.#samplers[side].draw());
    if (made) this.#report(made);
    for (let turns = side === 0 ? 2 : 3; made && turns > 0; turns--) made = this.#turned(made);
    if (made && !this.#has(made)) this.members.push(made);
  }

  /** Makes one child of two parents and lets it in if it is good enough. Needs two members. */
  breed(): void {
    const dense = this.#parent();
    let rest = this.#parent();
    if (rest === dense) rest = this.members[this.#random.below(this.members.length)]!;
    const longest = this.members[this.#longest()]!.length;
    // Justification gains little more than this: what starts out longer is given up as soon as it shows.
    const limit = Math.ceil(longest * HOPEFUL);
    const child = this.#sides.decode(0, this.#crossover.cross(dense, rest), limit);
    if (!child) return;
    this.#report(child);
    const back = this.#turned(child);
    const justified = back && back.length <= longest + NEARLY && this.#turned(back, longest);
    if (justified) this.admit(justified);
    else if (child.length <= longest) this.admit(child);
  }

  /** Lets a forward schedule in for one of the longest, unless it is longer still or there already. */
  admit(newcomer: Individual): void {
    const out = this.#longest();
    if (this.members[out]!.length < newcomer.length || this.#has(newcomer)) return;
    this.members[out] = newcomer;
  }

  #turned(from: Individual, limit?: number): Individual | null {
    const made = this.#sides.turn(from, limit);
    if (made) this.#report(made);
    return made;
  }

  /** The shorter of two members drawn. */
  #parent(): Individual {
    const one = this.members[this.#random.below(this.members.length)]!;
    const two = this.members[this.#random.below(this.members.length)]!;
    return two.length < one.length ? two : one;
  }

  #longest(): number {
    let out = 0;
    for (let at = 1; at < this.members.length; at++) {
      if (this.members[at]!.length > this.members[out]!.length) out = at;
    }
    return out;
  }

  #has({ length, starts }: Individual): boolean {
    return this.members.some(
      (member) =>
        member.length === length && member.starts.every((start, task) => start === starts[task]),
    );
  }
}

/** How much longer than the longest member a child may start out, and be after its first turn. Measured, not derived. */
const HOPEFUL = 1.05;
const NEARLY = 2;
