import type { Compiled } from '../../compile.ts';

/** Tasks that can run at once, each in one of its ways. */
export type Crowd = {
  readonly ways: readonly number[];
  /** Of all its ways together. */
  readonly weight: number;
  /** No crowd is heavier; false when the search was given up before that was known. */
  readonly heaviest: boolean;
};

/**
 * Finds the heaviest tasks that can run at once with the people, room and equipment there are. Branches over the ways,
 * heaviest first; what is left cannot weigh more than what each resource could carry by itself, where the weight of a
 * way is shared out among the resources it holds (a knapsack for each resource).
 */
export class Heaviest {
  readonly #compiled: Compiled;
  /** Where tasks exclude each other, as `apart` says. */
  readonly #shut: Uint8Array;
  readonly #taskOf: Int32Array;
  /** Where each resource's part of a row of `#carry` begins; the last column is for ways that hold nothing. */
  readonly #base: Int32Array;
  readonly #width: number;
  readonly #left: Int32Array;
  #carry = new Float64Array(0);
  #weight: Float64Array;
  #ways: number[] = [];
  #chosen: number[] = [];
  #best = 0;
  #bestWays: number[] = [];
  #steps = 0;
  #mostSteps = 0;

  constructor(compiled: Compiled, shut: Uint8Array) {
    const { count, seconds, wayHead, capacity } = compiled;
    this.#compiled = compiled;
    this.#shut = shut;
    this.#taskOf = new Int32Array(seconds.length);
    for (let task = 0; task < count; task += 1) {
      this.#taskOf.fill(task, wayHead[task]!, wayHead[task + 1]!);
    }
    this.#left = capacity.slice();
    this.#base = new Int32Array(capacity.length + 1);
    for (let of = 0; of < capacity.length; of += 1) {
      this.#base[of + 1] = this.#base[of]! + capacity[of]! + 1;
    }
    this.#width = this.#base[capacity.length]! + 1;
    this.#weight = new Float64Array(seconds.length);
  }

  /** Looks among the ways with a weight above 0, up to so many steps. */
  find(weight: Float64Array, mostSteps: number): Crowd {
    this.#weight = weight;
    this.#ways = [];
    for (let w = 0; w < weight.length; w += 1) {
      if (weight[w]! > 0) {
        this.#ways.push(w);
      }
    }
    this.#ways.sort((one, other) => weight[other]! - weight[one]!);
    this.#layCarry();
    this.#best = 0;
    this.#bestWays = [];
    this.#steps = 0;
    this.#mostSteps = mostSteps;
    this.#branch(0, 0);
    return {
      ways: this.#bestWays,
      weight: this.#best,
      heaviest: this.#steps <= mostSteps,
    };
  }

  /** For each way on, and each amount left of a resource, the most weight that the ways from there on bring it. */
  #layCarry(): void {
    const { useHead, useOf, useAmount, capacity } = this.#compiled;
    const width = this.#width;
    const count = this.#ways.length;
    if (this.#carry.length < (count + 1) * width) {
      this.#carry = new Float64Array((count + 1) * width);
    }
    const carry = this.#carry;
    carry.fill(0, count * width, (count + 1) * width);
    for (let at = count - 1; at >= 0; at -= 1) {
      const w = this.#ways[at]!;
      const row = at * width;
      carry.copyWithin(row, row + width, row + 2 * width);
      let shares = 0;
      for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
        shares += useAmount[use]! / capacity[useOf[use]!]!;
      }
      if (shares === 0) {
        carry[row + width - 1]! += this.#weight[w]!;
      }
      for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
        const of = useOf[use]!;
        const amount = useAmount[use]!;
        const part = (this.#weight[w]! * amount) / capacity[of]! / shares;
        const base = row + this.#base[of]!;
        for (let left = capacity[of]!; left >= amount; left -= 1) {
          const taken = carry[base + width + left - amount]! + part;
          if (taken > carry[base + left]!) {
            carry[base + left] = taken;
          }
        }
      }
    }
  }

  #branch(from: number, sum: number): void {
    if (sum > this.#best) {
      this.#best = sum;
      this.#bestWays = [...this.#chosen];
    }
    for (let at = from; at < this.#ways.length; at += 1) {
      this.#steps += 1;
      if (this.#steps > this.#mostSteps || sum + this.#mostFrom(at) <= this.#best) {
        return;
      }
      const w = this.#ways[at]!;
      if (this.#fits(w)) {
        this.#take(w, 1);
        this.#chosen.push(w);
        this.#branch(at + 1, sum + this.#weight[w]!);
        this.#chosen.pop();
        this.#take(w, -1);
      }
    }
  }

  #mostFrom(at: number): number {
    const row = at * this.#width;
    let most = this.#carry[row + this.#width - 1]!;
    for (let of = 0; of < this.#left.length; of += 1) {
      most += this.#carry[row + this.#base[of]! + this.#left[of]!]!;
    }
    return most;
  }

  #fits(w: number): boolean {
    const { useHead, useOf, useAmount, count } = this.#compiled;
    for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
      if (useAmount[use]! > this.#left[useOf[use]!]!) {
        return false;
      }
    }
    const task = this.#taskOf[w]!;
    return this.#chosen.every((other) => {
      const own = this.#taskOf[other]!;
      return own !== task && this.#shut[task * count + own] === 0;
    });
  }

  #take(w: number, times: number): void {
    const { useHead, useOf, useAmount } = this.#compiled;
    for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
      this.#left[useOf[use]!]! -= times * useAmount[use]!;
    }
  }
}
