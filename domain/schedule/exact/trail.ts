/**
 * Earliest and latest starts with their history. A bound is a number that only rises on the way down the search: bound
 * `2t` is the earliest start of task `t`, bound `2t + 1` its latest start with the sign turned. A fact "bound x is at
 * least v" is written (x, v); its opposite is (x ^ 1, 1 - v).
 */
export class Trail {
  readonly bounds: Int32Array;
  /** Position of the newest entry of each bound, or -1 while it stands where it stood at the root. */
  readonly last: Int32Array;
  /** Entries, oldest first: the bound raised, what it rose to and from, and the entry of the same bound before. */
  raised = new Int32Array(1024);
  value = new Int32Array(1024);
  from = new Int32Array(1024);
  earlier = new Int32Array(1024);
  /** Why: a kind of reason with two numbers that the kind explains. */
  kind = new Int8Array(1024);
  first = new Int32Array(1024);
  second = new Int32Array(1024);
  length = 0;
  /** Position of the first entry of each level above the root. */
  readonly levels: number[] = [];

  constructor(bounds: Int32Array) {
    this.bounds = bounds;
    this.last = new Int32Array(bounds.length).fill(-1);
  }

  /** Raises a bound. The caller has checked that it rises and stays within its partner. */
  push(bound: number, value: number, kind: number, first: number, second: number): void {
    if (this.length === this.raised.length) this.#grow();
    const at = this.length;
    this.raised[at] = bound;
    this.value[at] = value;
    this.from[at] = this.bounds[bound]!;
    this.earlier[at] = this.last[bound]!;
    this.kind[at] = kind;
    this.first[at] = first;
    this.second[at] = second;
    this.last[bound] = at;
    this.bounds[bound] = value;
    this.length = at + 1;
  }

  /** Takes the newest entry back and returns its bound. */
  pop(): number {
    const at = this.length - 1;
    const bound = this.raised[at]!;
    this.bounds[bound] = this.from[at]!;
    this.last[bound] = this.earlier[at]!;
    this.length = at;
    return bound;
  }

  /** The entry that made (bound, value) true, or -1 when it holds at the root. */
  entryOf(bound: number, value: number): number {
    let at = this.last[bound]!;
    while (at >= 0 && this.from[at]! >= value) at = this.earlier[at]!;
    return at;
  }

  /** The level an entry belongs to, from 1; 0 for -1. */
  levelOf(entry: number): number {
    let low = 0;
    let high = this.levels.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.levels[middle]! <= entry) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** What is on the trail holds for good: forgets how it came about. Only at the root. */
  settle(): void {
    for (let at = 0; at < this.length; at++) this.last[this.raised[at]!] = -1;
    this.length = 0;
  }

  #grow(): void {
    const wider = <Numbers extends Int32Array | Int8Array>(
      old: Numbers,
      fresh: Numbers,
    ): Numbers => {
      fresh.set(old);
      return fresh;
    };
    const size = this.raised.length * 2;
    this.raised = wider(this.raised, new Int32Array(size));
    this.value = wider(this.value, new Int32Array(size));
    this.from = wider(this.from, new Int32Array(size));
    this.earlier = wider(this.earlier, new Int32Array(size));
    this.kind = wider(this.kind, new Int8Array(size));
    this.first = wider(this.first, new Int32Array(size));
    this.second = wider(this.second, new Int32Array(size));
  }
}

/** Kinds of reason of an entry. */
export const DECIDED = 0;
/** An arc: (first, value - second) held. */
export const ARC = 1;
/** Too little was free at moment `first` for the task to run there. */
export const PROFILE = 2;
/** A nogood: number `first`; all its other facts were false. */
export const NOGOOD = 3;
