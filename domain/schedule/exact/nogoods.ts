/**
 * Facts of which at least one must hold, learned from dead ends. Each watches two of its facts, the first two: only when
 * one of those turns false does it need a look. Who watches a fact stands in a list for just that fact, so that a bound
 * that rises meets only those for whom something changes.
 */
export class Nogoods {
  /** Bound and value of each fact, two numbers a fact: those of nogood `n` stand from `begins[n]` up to `begins[n + 1]`. */
  facts = new Int32Array(8192);
  readonly begins: number[] = [0];
  readonly #weight: number[] = [];
  readonly #bounds: Int32Array;
  /** Where the lists of each bound begin, less the value that its first list is for. */
  readonly #base: Int32Array;
  /** First watch of each list, or -1. Watch `2n + w` is that of nogood `n` on its fact `w`. */
  readonly #heads: Int32Array;
  #next = new Int32Array(1024);
  #step = 1;

  /** Values stay between where the bounds stand now and where their partners do. */
  constructor(bounds: Int32Array) {
    this.#bounds = bounds;
    this.#base = new Int32Array(bounds.length);
    let lists = 0;
    for (let bound = 0; bound < bounds.length; bound++) {
      this.#base[bound] = lists - bounds[bound]!;
      lists += 1 - bounds[bound ^ 1]! - bounds[bound]! + 1;
    }
    this.#heads = new Int32Array(lists).fill(-1);
  }

  get count(): number {
    return this.#weight.length;
  }

  /** Keeps a nogood of two facts or more and returns its number. Single facts are not kept: they hold at the root. */
  add(facts: readonly number[]): number {
    const number = this.count;
    const begin = this.begins[number]!;
    const end = begin + facts.length;
    if (end > this.facts.length) this.facts = wider(this.facts);
    this.facts.set(facts, begin);
    this.begins.push(end);
    this.#weight.push(this.#step);
    this.#watch(2 * number);
    this.#watch(2 * number + 1);
    return number;
  }

  /** A nogood that explained a dead end is worth keeping. */
  bump(number: number): void {
    this.#weight[number]! += this.#step;
  }

  /** Newer dead ends count more. */
  age(): void {
    this.#step *= 1.001;
  }

  #watch(watch: number): void {
    if (watch >= this.#next.length) this.#next = wider(this.#next);
    const facts = this.facts;
    const fact = this.begins[watch >> 1]! + 2 * (watch & 1);
    // The fact turns false when its opposite comes true.
    const list = this.#base[facts[fact]! ^ 1]! + 1 - facts[fact + 1]!;
    this.#next[watch] = this.#heads[list]!;
    this.#heads[list] = watch;
  }

  /**
   * Looks at the nogoods with a watched fact that turned false when a bound rose. `force` makes the last open fact of a
   * nogood true and says whether it could. Returns the number of a nogood that cannot hold any more, or -1.
   */
  visit(
    risen: number,
    from: number,
    to: number,
    force: (bound: number, value: number, nogood: number) => boolean,
  ): number {
    const base = this.#base[risen]!;
    for (let value = from + 1; value <= to; value++) {
      const broken = this.#visitList(base + value, force);
      if (broken >= 0) return broken;
    }
    return -1;
  }

  #visitList(
    list: number,
    force: (bound: number, value: number, nogood: number) => boolean,
  ): number {
    const bounds = this.#bounds;
    const next = this.#next;
    const heads = this.#heads;
    const facts = this.facts;
    const begins = this.begins;
    let last = -1;
    for (let watch = heads[list]!; watch >= 0; ) {
      const number = watch >> 1;
      const begin = begins[number]!;
      const after = next[watch]!;
      const other = begin + 2 * (1 - (watch & 1));
      let moved = false;
      if (bounds[facts[other]!]! < facts[other + 1]!) {
        const open = openFact(facts, begin + 4, begins[number + 1]!, bounds);
        if (open > 0) {
          swap(facts, begin + 2 * (watch & 1), open);
          if (last < 0) heads[list] = after;
          else next[last] = after;
          this.#watch(watch);
          moved = true;
        } else if (!force(facts[other]!, facts[other + 1]!, number)) {
          return number;
        }
      }
      if (!moved) last = watch;
      watch = after;
    }
    return -1;
  }

  /**
   * Forgets the less useful half, save short ones, and the facts that are false for good. Only at the root and with
   * everything followed up: then what is not true for good has two open facts left.
   */
  forget(): void {
    const bounds = this.#bounds;
    const weights = Float64Array.from(this.#weight).sort();
    const middle = weights[weights.length >> 1]!;
    const kept: { open: number[]; weight: number }[] = [];
    for (let number = 0; number < this.count; number++) {
      const begin = this.begins[number]!;
      const end = this.begins[number + 1]!;
      if (this.#weight[number]! <= middle && end - begin > 4) continue;
      let holds = false;
      const open: number[] = [];
      for (let at = begin; at < end; at += 2) {
        const bound = this.facts[at]!;
        const least = this.facts[at + 1]!;
        if (bounds[bound]! >= least) holds = true;
        if (bounds[bound ^ 1]! < 1 - least) open.push(bound, least);
      }
      if (!holds) kept.push({ open, weight: this.#weight[number]! / this.#step });
    }
    this.#step = 1;
    this.begins.length = 1;
    this.#weight.length = 0;
    this.#heads.fill(-1);
    for (const { open, weight } of kept) this.#weight[this.add(open)] = weight;
  }
}

/** Position of the first fact in a stretch that is not false, or -1. */
function openFact(facts: Int32Array, from: number, to: number, bounds: Int32Array): number {
  for (let at = from; at < to; at += 2) {
    if (bounds[facts[at]! ^ 1]! < 1 - facts[at + 1]!) return at;
  }
  return -1;
}

function wider(numbers: Int32Array): Int32Array<ArrayBuffer> {
  const twice = new Int32Array(2 * numbers.length);
  twice.set(numbers);
  return twice;
}

function swap(facts: Int32Array, one: number, other: number): void {
  const bound = facts[one]!;
  const value = facts[one + 1]!;
  facts[one] = facts[other]!;
  facts[one + 1] = facts[other + 1]!;
  facts[other] = bound;
  facts[other + 1] = value;
}
