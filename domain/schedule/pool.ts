/** Part of a crew or of the room in a zone that came free together. */
export type Share = {
  readonly amount: number;
  /** Seconds. */
  readonly free: number;
  /** Numbers of the tasks that held it last; empty when nobody has yet. */
  readonly last: readonly number[];
};

/** Where a task would rather take its people from: the lower the better. */
export type Preference = (share: Share) => number;

/** The people of one crew, or the room of one zone, as shares that pass from task to task. */
export class Pool {
  #shares: Share[];

  constructor(amount: number) {
    this.#shares = [{ amount, free: 0, last: [] }];
  }

  /** When `amount` is free at the earliest. The pool must have as much. */
  freeAt(amount: number): number {
    const shares = [...this.#shares].sort((one, other) => one.free - other.free);
    let missing = amount;
    for (const share of shares) {
      missing -= share.amount;
      if (missing <= 0) {
        return share.free;
      }
    }
    throw new Error(`A pool is asked for ${missing} more than it has.`);
  }

  /** Takes `amount` of what is free at `start` for task `task` up to `finish`. Returns the shares it came from. */
  take(amount: number, start: number, finish: number, task: number, rather: Preference): Share[] {
    const free = this.#shares.filter((share) => share.free <= start);
    // Those free for longest first: a late finish of whoever had them then costs least.
    free.sort((one, other) => rather(one) - rather(other) || one.free - other.free);
    const taken: Share[] = [];
    let missing = amount;
    for (const share of free) {
      if (missing > 0) {
        const part = Math.min(missing, share.amount);
        taken.push({ ...share, amount: part });
        this.#shares.splice(this.#shares.indexOf(share), 1);
        if (part < share.amount) {
          this.#shares.push({ ...share, amount: share.amount - part });
        }
        missing -= part;
      }
    }
    this.#shares.push({ amount: amount - missing, free: finish, last: [task] });
    return taken;
  }

  /**
   * Notes that a task at work holds `amount` until `finish`, also where others hold the same: then it comes free when
   * the last of them is done.
   */
  overlay(amount: number, finish: number, task: number): void {
    this.#shares.sort((one, other) => one.last.length - other.last.length);
    const shares: Share[] = [];
    let missing = amount;
    for (const share of this.#shares) {
      const part = Math.min(missing, share.amount);
      missing -= part;
      if (part > 0) {
        const free = Math.max(share.free, finish);
        shares.push({ amount: part, free, last: [...share.last, task] });
      }
      if (part < share.amount) {
        shares.push({ ...share, amount: share.amount - part });
      }
    }
    this.#shares = shares;
  }
}
