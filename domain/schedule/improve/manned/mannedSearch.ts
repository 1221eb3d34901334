import type { Compiled } from '../../compile.ts';
import { anyWay, usualPeople } from '../../schedule.ts';
import type { Effort } from '../../search/decoder.ts';
import type { Random } from '../../search/random.ts';
import type { Individual } from '../individual.ts';
import { mannedFreeing } from './mannedFreeing.ts';
import { MannedPopulation } from './mannedPopulation.ts';
import { mannedProblems } from './mannedProblem.ts';
import { type Manned, MannedSides } from './mannedSides.ts';

/** How far an order is shaken, at most, as a share of the tasks. */
const mostShake = 0.3;

/** What is found is told when it is at most so much longer than the shortest found. */
const worthTelling = 1.004;

/**
 * Breeds schedules of the work as a plain network with ways, which is several times faster than placing the work itself.
 */
export class MannedSearch {
  readonly #random: Random;
  readonly #unit: number;
  readonly #sides: MannedSides;
  readonly #ranks: readonly Int32Array[];
  readonly #key: Float64Array;
  readonly #way: Int32Array;

  /** `unit` in seconds. `rules` are keys of the tasks of the work, least first. */
  constructor(
    compiled: Compiled,
    unit: number,
    rules: readonly Float64Array[],
    random: Random,
    effort: Effort,
  ) {
    this.#random = random;
    this.#unit = unit;
    this.#sides = new MannedSides(mannedProblems(compiled, unit), effort);
    const { numbers } = this.#sides.problems[0];
    this.#ranks = rules.map((rule) => {
      const order = [...numbers.keys()].sort((a, b) => rule[numbers[a]!]! - rule[numbers[b]!]!);
      const rank = new Int32Array(numbers.length);
      for (const [at, task] of order.entries()) {
        rank[task] = at;
      }
      return rank;
    });
    this.#key = new Float64Array(compiled.count);
    this.#way = Int32Array.from({ length: compiled.count }, (_, task) => compiled.wayHead[task]!);
  }

  /**
   * Breeds a new population of `size` with `known` among it as long as `mayGoOn`. `onFound` is told of the best so far
   * and of what is about as good: what to take the tasks of the work in order by and the way of each, valid until it
   * returns.
   */
  breed(
    known: readonly Individual[],
    size: number,
    mayGoOn: () => boolean,
    onFound: (key: Float64Array, way: Int32Array) => void,
  ): void {
    let shortest = Number.POSITIVE_INFINITY;
    const population = new MannedPopulation(this.#sides, this.#random, (found) => {
      if (found.length <= shortest * worthTelling) {
        shortest = Math.min(shortest, found.length);
        onFound(this.#keyOf(found), this.#wayOf(found));
      }
    });
    const { numbers } = this.#sides.problems[0];
    for (const { start, way } of known) {
      const keys = Int32Array.from(numbers, (task) => Math.round(start[task]! / this.#unit));
      population.add(
        keys,
        Int32Array.from(numbers, (task) => way[task]!),
        null,
      );
    }
    for (let drawn = 0; population.members.length < size && drawn < 2 * size; drawn += 1) {
      if (!mayGoOn()) {
        return;
      }
      this.#sample(population, drawn);
    }
    while (population.members.length > 1 && mayGoOn()) {
      population.breed();
    }
  }

  /** Frees stretches of `base` as long as `mayGoOn`, and tells of what it finds as `breed` does. */
  free(
    base: Individual,
    mayGoOn: () => boolean,
    onFound: (key: Float64Array, way: Int32Array) => void,
  ): void {
    const { numbers } = this.#sides.problems[0];
    const keys = Int32Array.from(numbers, (task) => Math.round(base.start[task]! / this.#unit));
    const ways = Int32Array.from(numbers, (task) => base.way[task]!);
    const first = this.#sides.decode(0, keys, ways, null, Number.MAX_SAFE_INTEGER);
    if (first) {
      mannedFreeing(this.#sides, this.#random, first, mayGoOn, (found) =>
        onFound(this.#keyOf(found), this.#wayOf(found)),
      );
    }
  }

  /** Adds a schedule in the order of a rule, shaken at random, each task in the way that finishes first. */
  #sample(population: MannedPopulation, drawn: number): void {
    const { tasks, firstWay } = this.#sides.problems[0];
    const rank = this.#ranks[drawn % this.#ranks.length]!;
    const reach = tasks * mostShake * this.#random.unit();
    const keys = rank.map((own) => own + Math.round(reach * this.#random.unit()));
    const other = this.#random.unit();
    const open = Uint8Array.from(rank, () => (this.#random.unit() < other ? anyWay : usualPeople));
    population.add(keys, firstWay.slice(), open);
  }

  #keyOf({ starts }: Manned): Float64Array {
    for (const [task, number] of this.#sides.problems[0].numbers.entries()) {
      this.#key[number] = starts[task]!;
    }
    return this.#key;
  }

  #wayOf({ ways }: Manned): Int32Array {
    for (const [task, number] of this.#sides.problems[0].numbers.entries()) {
      this.#way[number] = ways[task]!;
    }
    return this.#way;
  }
}
