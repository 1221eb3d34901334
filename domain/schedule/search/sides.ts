import { Decoder, type Effort, GIVEN_UP } from './decoder.ts';
import { orderByKey, raiseAlong, Scratch } from './orders.ts';
import { mirror, type Problem } from './problem.ts';

/** Which way time runs: 0 forwards, 1 backwards from the end. */
export type Side = 0 | 1;

/** A schedule in the time and numbering of its side, pushed as early there as its order allows. */
export type Individual = {
  readonly side: Side;
  readonly starts: Int32Array;
  readonly length: number;
};

/** The problem seen from both ends. Turning a schedule from one side to the other and back is double justification. */
export class Sides {
  readonly problems: readonly [Problem, Problem];
  readonly #decoders: readonly [Decoder, Decoder];
  /** By side: whether a task may start before one that it waits for. */
  readonly #mayOvertake: readonly [boolean, boolean];
  readonly #keys: Int32Array;
  readonly #order: Int32Array;
  readonly #scratch: Scratch;

  constructor(problem: Problem, effort: Effort) {
    const turned = mirror(problem);
    this.problems = [problem, turned];
    this.#decoders = [new Decoder(problem, effort), new Decoder(turned, effort)];
    this.#mayOvertake = [anyNegative(problem), anyNegative(turned)];
    this.#keys = new Int32Array(problem.tasks);
    this.#order = new Int32Array(problem.tasks);
    this.#scratch = new Scratch(problem.tasks);
  }

  /** Serial generation in the order given; null once it must become longer than `limit`. */
  decode(side: Side, order: Int32Array, limit?: number): Individual | null {
    const starts = new Int32Array(order.length);
    const length = this.#decoders[side].decode(order, starts, limit);
    return length === GIVEN_UP ? null : { side, starts, length };
  }

  /** The schedule pushed the other way: what ends last here goes first there. */
  turn(from: Individual, limit?: number): Individual | null {
    return this.decode(other(from.side), this.#lastFirst(from), limit);
  }

  /** Starts in forward time. */
  forwardStarts({ side, starts, length }: Individual): Int32Array {
    return side === 0 ? starts : flip(this.problems[1].durations, starts, length);
  }

  #lastFirst({ side, starts, length }: Individual): Int32Array {
    const turned = other(side);
    this.#keys.set(flip(this.problems[side].durations, starts, length));
    if (this.#mayOvertake[turned]) raiseAlong(this.problems[turned].before, this.#keys);
    orderByKey(this.#keys, this.#order, this.#scratch);
    return this.#order;
  }
}

function anyNegative({ before }: Problem): boolean {
  return before.lag.some((lag) => lag < 0);
}

function other(side: Side): Side {
  return side === 0 ? 1 : 0;
}

/** Starts of the same schedule in the time and numbering of the other side. */
function flip(durations: Int32Array, starts: Int32Array, length: number): Int32Array {
  const tasks = starts.length;
  const flipped = new Int32Array(tasks);
  for (let task = 0; task < tasks; task++) {
    flipped[tasks - 1 - task] = length - starts[task]! - durations[task]!;
  }
  return flipped;
}
