import { type Packing, pack } from './packing.ts';
import { headsAndTails, type Problem } from './problem.ts';

/** Counts work honestly: one placement is one task given a start, wherever that happens. */
export type Effort = { placements: number };

/** Told by a decoder when the schedule under way was given up because it would pass its limit. */
export const GIVEN_UP = -1;

/** Serial schedule generation over a profile of free units per moment. */
export class Decoder {
  readonly problem: Problem;
  readonly #effort: Effort;
  readonly #packing: Packing;
  readonly #tails: Int32Array;
  readonly #free: Int32Array;
  /** Moments from here on are untouched. */
  #touched = 0;

  constructor(problem: Problem, effort: Effort) {
    this.problem = problem;
    this.#effort = effort;
    this.#packing = pack(problem);
    this.#tails = headsAndTails(problem).tails;
    const horizon = this.#tails.reduce((sum, _, task) => sum + reach(problem, task), 1);
    this.#free = new Int32Array(horizon * this.#packing.words);
    this.#touched = horizon;
  }

  /**
   * Gives each task of `order` the earliest start its arcs and the free units allow, into `starts`. The first `kept`
   * tasks stand at the starts they have. Returns the length of the schedule, or GIVEN_UP once it must exceed `limit`.
   */
  decode(order: Int32Array, starts: Int32Array, limit = 0x3fffffff, kept = 0): number {
    this.#clear();
    for (let at = 0; at < kept; at++) this.#hold(order[at]!, starts[order[at]!]!);
    const length =
      this.#packing.words === 1
        ? this.#placeOneWord(order, starts, limit, kept)
        : this.#placeManyWords(order, starts, limit, kept);
    return length;
  }

  #clear(): void {
    const { words, full } = this.#packing;
    if (words === 1) {
      this.#free.fill(full[0]!, 0, this.#touched);
    } else {
      for (let at = 0; at < this.#touched * words; at++) this.#free[at] = full[at % words]!;
    }
    this.#touched = 0;
  }

  #hold(task: number, start: number): void {
    const { words, demands } = this.#packing;
    const finish = start + this.problem.durations[task]!;
    for (let word = 0; word < words; word++) {
      const demand = demands[task * words + word]!;
      for (let moment = start; moment < finish; moment++) {
        this.#free[moment * words + word]! -= demand;
      }
    }
    if (finish > this.#touched) this.#touched = finish;
  }

  #placeOneWord(order: Int32Array, starts: Int32Array, limit: number, kept: number): number {
    const { durations, before, tasks } = this.problem;
    const first = before.first;
    const earlier = before.task;
    const lag = before.lag;
    const free = this.#free;
    const tails = this.#tails;
    const demands = this.#packing.demands;
    const guard = this.#packing.guards[0]!;
    let touched = this.#touched;
    let at = kept;
    for (; at < tasks; at++) {
      const task = order[at]!;
      let start = 0;
      for (let arc = first[task]!, end = first[task + 1]!; arc < end; arc++) {
        const ready = starts[earlier[arc]!]! + lag[arc]!;
        if (ready > start) start = ready;
      }
      const duration = durations[task]!;
      const demand = demands[task]!;
      if (demand !== 0) {
        // From the far end back, so that a moment with too little room moves the start past it at once.
        // Moments from `start` to below `clear` are known to be free.
        let clear = start;
        let moment = start + duration - 1;
        while (moment >= clear) {
          if (((free[moment]! - demand) & guard) === guard) {
            moment -= 1;
          } else {
            clear = start + duration;
            start = moment + 1;
            moment = start + duration - 1;
          }
        }
        for (let moment = start, end = start + duration; moment < end; moment++) {
          free[moment] = free[moment]! - demand;
        }
      }
      starts[task] = start;
      if (start + duration > touched) touched = start + duration;
      if (start + tails[task]! > limit) {
        this.#touched = touched;
        this.#effort.placements += at + 1 - kept;
        return GIVEN_UP;
      }
    }
    this.#touched = touched;
    this.#effort.placements += tasks - kept;
    return touched;
  }

  #placeManyWords(order: Int32Array, starts: Int32Array, limit: number, kept: number): number {
    const { durations, before, tasks } = this.problem;
    const { words, demands, guards } = this.#packing;
    const free = this.#free;
    for (let at = kept; at < tasks; at++) {
      const task = order[at]!;
      let start = 0;
      for (let arc = before.first[task]!; arc < before.first[task + 1]!; arc++) {
        start = Math.max(start, starts[before.task[arc]!]! + before.lag[arc]!);
      }
      const duration = durations[task]!;
      for (let word = 0; word < words; word++) {
        const demand = demands[task * words + word]!;
        if (demand === 0) continue;
        const guard = guards[word]!;
        let moment = start + duration - 1;
        let moved = false;
        while (moment >= start) {
          if (((free[moment * words + word]! - demand) & guard) === guard) {
            moment -= 1;
          } else {
            start = moment + 1;
            moment = start + duration - 1;
            moved = true;
          }
        }
        // A later start has to be asked of the words before this one again.
        if (moved && word > 0) word = -1;
      }
      starts[task] = start;
      this.#hold(task, start);
      this.#effort.placements += 1;
      if (start + this.#tails[task]! > limit) return GIVEN_UP;
    }
    return this.#touched;
  }
}

/** How far one task can push the end of a schedule out: its run, or the longest wait that starts with it. */
function reach(problem: Problem, task: number): number {
  let longest = problem.durations[task]!;
  for (let at = problem.after.first[task]!; at < problem.after.first[task + 1]!; at++) {
    longest = Math.max(longest, problem.after.lag[at]!);
  }
  return longest;
}
