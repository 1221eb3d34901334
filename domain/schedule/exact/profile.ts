import { type Packing, pack } from '../search/packing.ts';
import type { Problem } from '../search/problem.ts';

/**
 * What is surely in use in each moment: a task whose latest start is before its earliest finish runs in between whatever
 * happens. Keeps what is left free, packed, and follows the bounds up and down the search.
 */
export class Profile {
  readonly packing: Packing;
  readonly free: Int32Array;
  /** Where less has become free since this was last reset: moments from and up to. */
  changedFrom = 0;
  changedTo = 0;
  readonly #problem: Problem;
  readonly #bounds: Int32Array;
  /** The sure part counted so far, per task; empty when the end is not after the start. */
  readonly #from: Int32Array;
  readonly #to: Int32Array;

  constructor(problem: Problem, bounds: Int32Array, horizon: number) {
    this.#problem = problem;
    this.#bounds = bounds;
    this.packing = pack(problem);
    const { words, full } = this.packing;
    this.free = new Int32Array((horizon + 1) * words);
    for (let at = 0; at < this.free.length; at++) this.free[at] = full[at % words]!;
    this.#from = new Int32Array(problem.tasks);
    this.#to = new Int32Array(problem.tasks);
  }

  /** Counts the sure part of a task as its bounds now stand. Returns the first moment that is too full, or -1. */
  widen(task: number): number {
    const from = -this.#bounds[2 * task + 1]!;
    const to = this.#bounds[2 * task]! + this.#problem.durations[task]!;
    if (from >= to) return -1;
    const oldFrom = this.#from[task]!;
    const oldTo = this.#to[task]!;
    if (oldFrom >= oldTo) {
      this.#from[task] = from;
      this.#to[task] = to;
      return this.#use(task, from, to, 1);
    }
    this.#from[task] = from;
    this.#to[task] = to;
    const before = this.#use(task, from, oldFrom, 1);
    const after = this.#use(task, oldTo, to, 1);
    return before >= 0 ? before : after;
  }

  /** Gives back what is no longer sure after bounds were taken back. */
  narrow(task: number): void {
    const oldFrom = this.#from[task]!;
    const oldTo = this.#to[task]!;
    if (oldFrom >= oldTo) return;
    // Bounds may still stand wider than what was counted: never count more here.
    const from = Math.max(oldFrom, -this.#bounds[2 * task + 1]!);
    const to = Math.min(oldTo, this.#bounds[2 * task]! + this.#problem.durations[task]!);
    if (from === oldFrom && to === oldTo) return;
    if (from >= to) {
      this.#use(task, oldFrom, oldTo, -1);
      this.#from[task] = 0;
      this.#to[task] = 0;
      return;
    }
    this.#use(task, oldFrom, from, -1);
    this.#use(task, to, oldTo, -1);
    this.#from[task] = from;
    this.#to[task] = to;
  }

  /** The last moment of [from, to) with too little free for the task, or -1. */
  lastShort(task: number, from: number, to: number): number {
    const { words, demands, guards } = this.packing;
    const free = this.free;
    let found = -1;
    let least = from;
    for (let word = 0; word < words; word++) {
      const demand = demands[task * words + word]!;
      if (demand === 0) continue;
      const guard = guards[word]!;
      for (let moment = to - 1; moment >= least; moment--) {
        if (((free[moment * words + word]! - demand) & guard) === guard) continue;
        found = moment;
        least = moment + 1;
        break;
      }
    }
    return found;
  }

  /** The first moment of [from, to) with too little free for the task, or -1. */
  firstShort(task: number, from: number, to: number): number {
    const { words, demands, guards } = this.packing;
    const free = this.free;
    let found = -1;
    let end = to;
    for (let word = 0; word < words; word++) {
      const demand = demands[task * words + word]!;
      if (demand === 0) continue;
      const guard = guards[word]!;
      for (let moment = from; moment < end; moment++) {
        if (((free[moment * words + word]! - demand) & guard) === guard) continue;
        found = moment;
        end = moment;
        break;
      }
    }
    return found;
  }

  /** Forgets what has changed. */
  resetChanged(): void {
    this.changedFrom = 0x3fffffff;
    this.changedTo = -1;
  }

  #use(task: number, from: number, to: number, sign: number): number {
    if (sign > 0 && from < to) {
      if (from < this.changedFrom) this.changedFrom = from;
      if (to > this.changedTo) this.changedTo = to;
    }
    const { words, demands, guards } = this.packing;
    const free = this.free;
    let full = -1;
    for (let word = 0; word < words; word++) {
      const demand = demands[task * words + word]! * sign;
      if (demand === 0) continue;
      const guard = guards[word]!;
      for (let moment = from; moment < to; moment++) {
        const left = (free[moment * words + word]! - demand) | 0;
        free[moment * words + word] = left;
        if ((left & guard) !== guard && full < 0) full = moment;
      }
    }
    return full;
  }
}
