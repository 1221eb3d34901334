import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Draws from one seed: the same seed gives the same draws. */
export class Random {
  readonly #generator;

  constructor(seed: number) {
    this.#generator = xoroshiro128plus(seed);
  }

  /** A number from 0 up to, not including, 1. */
  unit(): number {
    return (this.#generator.next() >>> 0) / 4294967296;
  }

  /** A whole number from 0 up to, not including, `count`. */
  below(count: number): number {
    return Math.floor(this.unit() * count);
  }
}
