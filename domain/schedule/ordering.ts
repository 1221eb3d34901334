import type { Compiled } from './compile.ts';

/**
 * Puts tasks in order of a key so that the order also leads along the links (or against them): of the tasks that may
 * come next always the one with the least key, the lower number where keys are equal. Made once, used for every schedule.
 */
export class Ordering {
  readonly #compiled: Compiled;
  readonly #open: Int32Array;
  readonly #heap: Int32Array;
  #size = 0;

  constructor(compiled: Compiled) {
    this.#compiled = compiled;
    this.#open = new Int32Array(compiled.count);
    this.#heap = new Int32Array(compiled.count);
  }

  /** Fills `order` with the tasks that have a 1 in `only`, along the links, least key first. Returns how many. */
  along(key: Float64Array, only: Uint8Array, order: Int32Array): number {
    const { beforeHead, before, afterHead, after } = this.#compiled;
    return this.#fill(key, only, order, beforeHead, before, afterHead, after);
  }

  /** The same against the links: a task comes once everything after it has come. */
  against(key: Float64Array, only: Uint8Array, order: Int32Array): number {
    const { beforeHead, before, afterHead, after } = this.#compiled;
    return this.#fill(key, only, order, afterHead, after, beforeHead, before);
  }

  #fill(
    key: Float64Array,
    only: Uint8Array,
    order: Int32Array,
    waitsHead: Int32Array,
    waits: Int32Array,
    freesHead: Int32Array,
    frees: Int32Array,
  ): number {
    const open = this.#open;
    this.#size = 0;
    for (let task = 0; task < open.length; task += 1) {
      let count = 0;
      for (let at = waitsHead[task]!; at < waitsHead[task + 1]!; at += 1) {
        count += only[waits[at]!]!;
      }
      open[task] = count;
      if (count === 0 && only[task] === 1) {
        this.#push(task, key);
      }
    }
    let filled = 0;
    while (this.#size > 0) {
      const task = this.#pop(key);
      order[filled] = task;
      filled += 1;
      for (let at = freesHead[task]!; at < freesHead[task + 1]!; at += 1) {
        const next = frees[at]!;
        open[next]! -= 1;
        if (open[next] === 0 && only[next] === 1) {
          this.#push(next, key);
        }
      }
    }
    return filled;
  }

  #push(task: number, key: Float64Array): void {
    const heap = this.#heap;
    let at = this.#size;
    this.#size += 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (!comesFirst(task, heap[above]!, key)) {
        break;
      }
      heap[at] = heap[above]!;
      at = above;
    }
    heap[at] = task;
  }

  #pop(key: Float64Array): number {
    const heap = this.#heap;
    const top = heap[0]!;
    this.#size -= 1;
    const size = this.#size;
    const task = heap[size]!;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= size) {
        break;
      }
      if (below + 1 < size && comesFirst(heap[below + 1]!, heap[below]!, key)) {
        below += 1;
      }
      if (!comesFirst(heap[below]!, task, key)) {
        break;
      }
      heap[at] = heap[below]!;
      at = below;
    }
    heap[at] = task;
    return top;
  }
}

function comesFirst(one: number, other: number, key: Float64Array): boolean {
  const difference = key[one]! - key[other]!;
  return difference < 0 || (difference === 0 && one < other);
}
