import { anyWay, sameWay } from '../../schedule.ts';
import type { Effort } from '../../search/decoder.ts';
import { afterStart, finishAfterFinish, type MannedProblem } from './mannedProblem.ts';

/** Length of a schedule that was given up because it would pass its limit. */
export const givenUp = -1;

/** Serial schedule generation over a profile of what is free at each moment, with a way for each task. */
export class MannedDecoder {
  readonly problem: MannedProblem;
  readonly #effort: Effort;
  readonly #free: Int32Array;
  /** Moments from here on are untouched. */
  #touched = 0;

  constructor(problem: MannedProblem, effort: Effort) {
    this.problem = problem;
    this.#effort = effort;
    const { durations, ready, before, packing } = problem;
    let horizon = 1;
    for (let task = 0; task < problem.tasks; task += 1) {
      const from = problem.firstWay[task]!;
      const to = problem.endWay[task]!;
      horizon += durations.subarray(from, to).reduce((a, b) => Math.max(a, b));
      horizon += ready.subarray(from, to).reduce((a, b) => Math.max(a, b));
    }
    horizon += before.wait.reduce((sum, wait) => sum + Math.max(0, wait), 0);
    this.#free = new Int32Array(horizon * packing.words);
    this.#touched = horizon;
  }

  /**
   * Gives each task of `order` the earliest start its links and what is free allow, into `starts`, in the way it has in
   * `ways`, or, as far as `open` says that it may be given others, in the one that finishes first. Returns the length,
   * or `givenUp` once it must exceed `limit`.
   */
  decode(
    order: Int32Array,
    ways: Int32Array,
    open: Uint8Array | null,
    starts: Int32Array,
    limit: number,
  ): number {
    const { tasks, firstWay, endWay, usualEnd, durations, ready, backwards, tails } = this.problem;
    this.#clear();
    let length = 0;
    for (let at = 0; at < tasks; at += 1) {
      const task = order[at]!;
      const first = firstWay[task]!;
      const may = open === null ? sameWay : open[task]!;
      const end = may === sameWay ? first : may === anyWay ? endWay[task]! : usualEnd[task]!;
      let best = ways[task]!;
      let begin = this.#earliest(task, best, ways, starts, limit);
      for (let w = first; w < end; w += 1) {
        if (w === ways[task]) {
          continue;
        }
        const most = begin + durations[best]! - durations[w]!;
        const other = this.#earliest(task, w, ways, starts, most);
        if (other < most) {
          begin = other;
          best = w;
        }
      }
      ways[task] = best;
      starts[task] = begin;
      const finish = begin + durations[best]!;
      this.#hold(best, begin, finish);
      length = Math.max(length, finish + (backwards ? ready[best]! : 0));
      if (length > limit || begin + tails[task]! > limit) {
        this.#effort.placements += at + 1;
        return givenUp;
      }
    }
    this.#effort.placements += tasks;
    return length;
  }

  #clear(): void {
    const { words, full } = this.problem.packing;
    const free = this.#free;
    if (words === 1) {
      free.fill(full[0]!, 0, this.#touched);
    } else {
      const end = this.#touched * words;
      for (let word = 0; word < words; word += 1) {
        const all = full[word]!;
        for (let at = word; at < end; at += words) {
          free[at] = all;
        }
      }
    }
    this.#touched = 0;
  }

  #hold(w: number, start: number, finish: number): void {
    const { words, demands } = this.problem.packing;
    const free = this.#free;
    for (let word = 0; word < words; word += 1) {
      const demand = demands[w * words + word]!;
      const end = finish * words;
      for (let at = start * words + word; demand !== 0 && at < end; at += words) {
        free[at] = free[at]! - demand;
      }
    }
    this.#touched = Math.max(this.#touched, finish);
  }

  /** The earliest start of the task in way `w`; anything above `limit` where it cannot start by then. */
  #earliest(task: number, w: number, ways: Int32Array, starts: Int32Array, limit: number): number {
    const { durations, ready, backwards, before, packing } = this.problem;
    const duration = durations[w]!;
    let start = backwards ? 0 : ready[w]!;
    for (let at = before.first[task]!; at < before.first[task + 1]!; at += 1) {
      const early = before.task[at]!;
      const kind = before.kind[at]!;
      let after = starts[early]! + before.wait[at]!;
      if (kind !== afterStart) {
        after += durations[ways[early]!]!;
      }
      if (kind === finishAfterFinish) {
        after -= duration;
      }
      if (after > start) {
        start = after;
      }
    }
    const { words, demands, guards } = packing;
    const free = this.#free;
    let agreed = 0;
    // A start that one word has moved has to be asked of all the others again.
    for (let word = 0; agreed < words && start <= limit; word = word + 1 === words ? 0 : word + 1) {
      const demand = demands[w * words + word]!;
      const guard = guards[word]!;
      let moved = false;
      if (demand !== 0) {
        let clear = start;
        let moment = start + duration - 1;
        while (moment >= clear) {
          if (((free[moment * words + word]! - demand) & guard) === guard) {
            moment -= 1;
          } else {
            clear = start + duration;
            start = moment + 1;
            moment = start + duration - 1;
            moved = true;
          }
        }
      }
      agreed = moved ? 1 : agreed + 1;
    }
    return start;
  }
}
