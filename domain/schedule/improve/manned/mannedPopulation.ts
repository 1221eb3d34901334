import type { Random } from '../../search/random.ts';
import { MannedCrossover } from './mannedCrossover.ts';
import type { Manned, MannedSides } from './mannedSides.ts';

/** How much longer than the longest member a child may start out, and be after its first turn, as shares. */
const hopeful = 1.05;
const nearly = 1.003;

/** A steady population of doubly justified schedules, each with its ways. */
export class MannedPopulation {
  readonly members: Manned[] = [];
  readonly #sides: MannedSides;
  readonly #random: Random;
  readonly #crossover: MannedCrossover;
  readonly #report: (found: Manned) => void;

  /** `report` is told of every forward schedule made. */
  constructor(sides: MannedSides, random: Random, report: (found: Manned) => void) {
    this.#sides = sides;
    this.#random = random;
    this.#crossover = new MannedCrossover(sides.problems[0], random);
    this.#report = report;
  }

  /** Adds what the order of `keys` with these ways gives, the ways of open tasks chosen anew. Both are written to. */
  add(keys: Int32Array, ways: Int32Array, open: Uint8Array | null): void {
    const made = this.#sides.decode(0, keys, ways, open, Number.MAX_SAFE_INTEGER);
    const back = made && this.#sides.turn(made, null, Number.MAX_SAFE_INTEGER);
    const forth = back && this.#sides.turn(back, open, Number.MAX_SAFE_INTEGER);
    const best = made && forth && forth.length > made.length ? made : forth;
    if (best && !this.#has(best)) {
      this.members.push(best);
      this.#report(best);
    }
  }

  /** Makes one child of two parents and lets it in if it is good enough. Needs two members. */
  breed(): void {
    const dense = this.#parent();
    let rest = this.#parent();
    if (rest === dense) {
      rest = this.members[this.#random.below(this.members.length)]!;
    }
    // A child takes the place of its worse parent: the population stays varied for long.
    const worse = rest.length >= dense.length ? rest : dense;
    const out = this.members.indexOf(worse);
    const longest = worse.length;
    const { keys, ways, open } = this.#crossover.cross(dense, rest);
    const child = this.#sides.decode(0, keys, ways, open, Math.ceil(longest * hopeful));
    if (!child) {
      return;
    }
    const back = this.#sides.turn(child, null, Math.ceil(longest * nearly));
    const forth = back && this.#sides.turn(back, open, longest);
    const made = forth && forth.length <= child.length ? forth : child;
    if (made.length <= longest && !this.#has(made)) {
      this.members[out] = made;
      this.#report(made);
    }
  }

  /** The shorter of two members drawn. */
  #parent(): Manned {
    const one = this.members[this.#random.below(this.members.length)]!;
    const two = this.members[this.#random.below(this.members.length)]!;
    return two.length < one.length ? two : one;
  }

  #has({ length, starts, ways }: Manned): boolean {
    return this.members.some(
      (member) =>
        member.length === length &&
        member.starts.every((start, task) => start === starts[task]) &&
        member.ways.every((way, task) => way === ways[task]),
    );
  }
}
