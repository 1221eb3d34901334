import type { Effort } from '../../search/decoder.ts';
import { orderByKey, raiseAlong, Scratch } from '../../search/orders.ts';
import { givenUp, MannedDecoder } from './mannedDecoder.ts';
import type { MannedProblem } from './mannedProblem.ts';

/** A schedule in the time and numbering of its side: 0 forwards, 1 backwards from the end. */
export type Manned = {
  readonly side: 0 | 1;
  readonly starts: Int32Array;
  readonly ways: Int32Array;
  readonly length: number;
};

/** Makes schedules from either end. Turning one round and back is double justification. */
export class MannedSides {
  readonly problems: readonly [MannedProblem, MannedProblem];
  readonly #decoders: readonly [MannedDecoder, MannedDecoder];
  readonly #keys: Int32Array;
  readonly #order: Int32Array;
  readonly #scratch: Scratch;

  constructor(problems: readonly [MannedProblem, MannedProblem], effort: Effort) {
    const { tasks } = problems[0];
    this.problems = problems;
    this.#decoders = [
      new MannedDecoder(problems[0], effort),
      new MannedDecoder(problems[1], effort),
    ];
    this.#keys = new Int32Array(tasks);
    this.#order = new Int32Array(tasks);
    this.#scratch = new Scratch(tasks);
  }

  /** Places in the order of `keys`, raised along links, on a side; null once it must become longer than `limit`. */
  decode(
    side: 0 | 1,
    keys: Int32Array,
    ways: Int32Array,
    open: Uint8Array | null,
    limit: number,
  ): Manned | null {
    const { before, tasks } = this.problems[side];
    raiseAlong(before, keys);
    orderByKey(keys, this.#order, this.#scratch);
    const starts = new Int32Array(tasks);
    const length = this.#decoders[side].decode(this.#order, ways, open, starts, limit);
    return length === givenUp ? null : { side, starts, ways, length };
  }

  /** The schedule pushed the other way: what ends last here goes first there. */
  turn(from: Manned, open: Uint8Array | null, limit: number): Manned | null {
    const { side, starts, ways, length } = from;
    const { durations } = this.problems[side];
    const last = starts.length - 1;
    const turned = new Int32Array(ways.length);
    for (let task = 0; task <= last; task += 1) {
      turned[last - task] = ways[task]!;
      this.#keys[last - task] = length - starts[task]! - durations[ways[task]!]!;
    }
    return this.decode(side === 0 ? 1 : 0, this.#keys, turned, open, limit);
  }
}
