import { anyWay, usualPeople } from '../schedule.ts';
import type { Random } from '../search/random.ts';
import { Crossover } from './crossover.ts';
import { areAlike, type Individual, remember } from './individual.ts';
import type { Placer } from './placer.ts';

/** How far an order is shaken: least and most share of its span. */
const leastShake = 0.02;
const mostShake = 0.3;

/**
 * A steady population of doubly justified schedules. A child takes the place of one of the latest to open when it opens
 * no later than that and is not there yet.
 */
export class Population {
  readonly members: Individual[] = [];
  readonly #placer: Placer;
  readonly #random: Random;
  readonly #crossover: Crossover;
  readonly #note: (opening: number) => void;
  readonly #isOver: () => boolean;

  /** `note` is told of each schedule as it stands in the placer. */
  constructor(
    placer: Placer,
    random: Random,
    note: (opening: number) => void,
    isOver: () => boolean,
  ) {
    this.#placer = placer;
    this.#random = random;
    this.#crossover = new Crossover(placer, random);
    this.#note = note;
    this.#isOver = isOver;
  }

  /**
   * Adds a schedule in the order of `key`, each task in the way that finishes first, unless it is there already. So many
   * of the tasks, as a share, may have other than the usual people.
   */
  add(key: Float64Array, other = 0): void {
    const { pinned } = this.#placer;
    pinned.fill(usualPeople);
    for (let task = 0; task < pinned.length && other > 0; task += 1) {
      pinned[task] = other < 1 && this.#random.unit() >= other ? usualPeople : anyWay;
    }
    const made = this.#justified(key);
    if (made && !this.members.some((member) => areAlike(member, made))) {
      this.members.push(made);
    }
  }

  /** Adds a schedule in the order that comes out when the tasks are placed from the end, those with the greatest key first. */
  addFromEnd(key: Float64Array): void {
    this.#placer.fromEnd(key);
    this.add(this.#placer.now.start);
  }

  /** Adds a schedule in the order of `key` shaken at random. */
  addShaken(key: Float64Array): void {
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let task = 0; task < key.length; task += 1) {
      if (this.#placer.only[task] === 1) {
        least = Math.min(least, key[task]!);
        most = Math.max(most, key[task]!);
      }
    }
    const share = leastShake + (mostShake - leastShake) * this.#random.unit();
    const reach = (most - least) * share;
    const shaken = key.map((own) => own + reach * this.#random.unit());
    this.add(shaken, this.#placer.compiled.otherPeople === 0 ? 0 : this.#random.unit());
  }

  /** Makes one child of two parents and lets it in if it is good enough. Needs two members. */
  breed(): void {
    const dense = this.#parent();
    let rest = this.#parent();
    if (rest === dense) {
      rest = this.members[this.#random.below(this.members.length)]!;
    }
    this.#crossover.cross(dense, rest);
    const child = this.#justified(this.#crossover.key);
    if (child) {
      this.admit(child);
    }
  }

  /** Lets a schedule in for one of the latest, unless it opens later still or is there already. */
  admit(newcomer: Individual): void {
    let out = 0;
    for (const [at, { opening }] of this.members.entries()) {
      if (opening > this.members[out]!.opening) {
        out = at;
      }
    }
    const late = this.members[out]!.opening < newcomer.opening;
    if (!late && !this.members.some((member) => areAlike(member, newcomer))) {
      this.members[out] = newcomer;
    }
  }

  /** A schedule in the order of `key`, pushed to its end and back to the start; null when none was found. */
  #justified(key: Float64Array): Individual | null {
    const { now } = this.#placer;
    const first = this.#placer.forward(key);
    if (first === Number.POSITIVE_INFINITY) {
      return null;
    }
    this.#note(first);
    const made = remember(now, first);
    if (this.#isOver()) {
      return made;
    }
    this.#placer.pushToEnd(first);
    const opening = this.#placer.forward(now.start);
    if (opening > first) {
      return made;
    }
    this.#note(opening);
    return remember(now, opening);
  }

  /** The earlier to open of two members drawn. */
  #parent(): Individual {
    const one = this.members[this.#random.below(this.members.length)]!;
    const two = this.members[this.#random.below(this.members.length)]!;
    return two.opening < one.opening ? two : one;
  }
}
