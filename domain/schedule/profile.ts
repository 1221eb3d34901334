/** What is in use, or not there, of each resource before anything is planned; `from` absent: from the start of time. */
export type Busy = readonly (readonly BusySpell[])[];

type BusySpell = { readonly from?: number; readonly until: number; readonly amount: number };

/**
 * How much of each resource is in use over time, as steps: for each resource a rising list of moments and what is in
 * use from each to the next. The first moment is before all time; the last step is empty but for people who are gone for
 * good. Nothing is allocated after construction.
 */
export class Profile {
  readonly #capacity: Int32Array;
  readonly #base: Int32Array;
  readonly #count: Int32Array;
  readonly #time: Float64Array;
  readonly #used: Int32Array;
  readonly #busyCount: Int32Array;
  readonly #busyTime: Float64Array;
  readonly #busyUsed: Int32Array;

  /** `users` is how many holdings of each resource there can be at most. */
  constructor(capacity: Int32Array, users: Int32Array, busy: Busy) {
    const resources = capacity.length;
    this.#capacity = capacity;
    this.#base = new Int32Array(resources + 1);
    for (let r = 0; r < resources; r += 1) {
      this.#base[r + 1] = this.#base[r]! + 1 + 2 * users[r]! + 2 * (busy[r]?.length ?? 0);
    }
    const size = this.#base[resources]!;
    this.#count = new Int32Array(resources);
    this.#time = new Float64Array(size);
    this.#used = new Int32Array(size);
    this.#busyCount = new Int32Array(resources);
    this.#busyTime = new Float64Array(size);
    this.#busyUsed = new Int32Array(size);
    for (let r = 0; r < resources; r += 1) {
      this.#layBusy(r, busy[r] ?? []);
    }
    this.clear(true);
  }

  #layBusy(r: number, busy: Busy[number]): void {
    const always = Number.NEGATIVE_INFINITY;
    const turns = busy
      .flatMap(({ from = always, until, amount }) => [
        { at: from, more: amount },
        { at: until, more: -amount },
      ])
      .filter(({ at }) => at < Number.POSITIVE_INFINITY)
      .sort((one, other) => (one.at === other.at ? 0 : one.at - other.at));
    let at = this.#base[r]!;
    let used = 0;
    this.#busyTime[at] = always;
    for (const turn of turns) {
      used += turn.more;
      if (turn.at > this.#busyTime[at]!) {
        at += 1;
        this.#busyTime[at] = turn.at;
      }
      this.#busyUsed[at] = used;
    }
    this.#busyCount[r] = at + 1 - this.#base[r]!;
  }

  /** Frees everything, except what is busy where `withBusy`. */
  clear(withBusy: boolean): void {
    for (let r = 0; r < this.#count.length; r += 1) {
      const base = this.#base[r]!;
      this.#count[r] = 1;
      this.#time[base] = Number.NEGATIVE_INFINITY;
      this.#used[base] = 0;
      if (withBusy) {
        const count = this.#busyCount[r]!;
        this.#count[r] = count;
        for (let at = base; at < base + count; at += 1) {
          this.#time[at] = this.#busyTime[at]!;
          this.#used[at] = this.#busyUsed[at]!;
        }
      }
    }
  }

  /** The earliest start, no earlier than `start`, from which `amount` of resource `r` is free for `length` seconds. */
  earliest(r: number, start: number, length: number, amount: number): number {
    const most = this.#capacity[r]! - amount;
    const end = this.#base[r]! + this.#count[r]!;
    let from = start;
    for (let at = this.#stepAt(r, start); at < end && this.#time[at]! < from + length; at += 1) {
      if (this.#used[at]! > most) {
        from = at + 1 === end ? Number.POSITIVE_INFINITY : this.#time[at + 1]!;
      }
    }
    return from;
  }

  /** The end of the last step between `start` and `finish` that leaves less than `amount` of `r`; else `start`. */
  freeAfter(r: number, start: number, finish: number, amount: number): number {
    const most = this.#capacity[r]! - amount;
    const end = this.#base[r]! + this.#count[r]!;
    let after = start;
    for (let at = this.#stepAt(r, start); at < end && this.#time[at]! < finish; at += 1) {
      if (this.#used[at]! > most) {
        after = at + 1 === end ? Number.POSITIVE_INFINITY : this.#time[at + 1]!;
      }
    }
    return after;
  }

  /**
   * The earliest time after `start` at which what keeps a holding of `own` from `start` to `finish` is over: those held
   * of `other` within `gap` seconds of it, who cannot be there too; `start` where nothing does.
   */
  freeAcross(
    own: number,
    other: number,
    start: number,
    finish: number,
    amount: number,
    gap: number,
  ): number {
    const end = this.#base[own]! + this.#count[own]!;
    const otherEnd = this.#base[other]! + this.#count[other]!;
    for (let at = this.#stepAt(own, start); at < end && this.#time[at]! < finish; at += 1) {
      const room = this.#capacity[own]! - amount - this.#used[at]!;
      const from = Math.max(this.#time[at]!, start);
      const until = at + 1 === end ? Number.POSITIVE_INFINITY : this.#time[at + 1]!;
      const to = Math.min(until, finish) + gap;
      for (
        let far = this.#stepAt(other, from - gap);
        far < otherEnd && this.#time[far]! < to;
        far += 1
      ) {
        if (this.#used[far]! > room) {
          const over = far + 1 === otherEnd ? Number.POSITIVE_INFINITY : this.#time[far + 1]!;
          return Math.min(until, over + gap);
        }
      }
    }
    return start;
  }

  /** The begin of the first step between `start` and `finish` that leaves less than `amount` of `r`; else `finish`. */
  freeBefore(r: number, start: number, finish: number, amount: number): number {
    const most = this.#capacity[r]! - amount;
    const end = this.#base[r]! + this.#count[r]!;
    for (let at = this.#stepAt(r, start); at < end && this.#time[at]! < finish; at += 1) {
      if (this.#used[at]! > most) {
        return this.#time[at]!;
      }
    }
    return finish;
  }

  /** The latest finish, no later than `finish`, up to which `amount` of resource `r` is free for `length` seconds. */
  latest(r: number, finish: number, length: number, amount: number): number {
    const most = this.#capacity[r]! - amount;
    const base = this.#base[r]!;
    let to = finish;
    let at = this.#stepAt(r, finish);
    if (at > base && this.#time[at] === finish) {
      at -= 1;
    }
    for (; at >= base; at -= 1) {
      if (this.#used[at]! > most) {
        to = this.#time[at]!;
      }
      if (this.#time[at]! <= to - length) {
        break;
      }
    }
    return to;
  }

  /** Holds `amount` of resource `r` from `start` up to `finish`. */
  hold(r: number, start: number, finish: number, amount: number): void {
    const first = this.#moment(r, start);
    const last = this.#moment(r, finish);
    for (let at = first; at < last; at += 1) {
      this.#used[at]! += amount;
    }
  }

  /** The last step of `r` that begins at or before `time`. */
  #stepAt(r: number, time: number): number {
    let low = this.#base[r]!;
    let high = low + this.#count[r]! - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#time[middle]! <= time) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  /** The step of `r` that begins exactly at `time`, splitting one where there is none. */
  #moment(r: number, time: number): number {
    const at = this.#stepAt(r, time);
    if (this.#time[at] === time) {
      return at;
    }
    const end = this.#base[r]! + this.#count[r]!;
    this.#time.copyWithin(at + 2, at + 1, end);
    this.#used.copyWithin(at + 2, at + 1, end);
    this.#time[at + 1] = time;
    this.#used[at + 1] = this.#used[at]!;
    this.#count[r]! += 1;
    return at + 1;
  }
}
