import type { Share, Source, Wish } from './source.ts';

/** The people of one crew, or the limited room of one zone, as shares that pass from task to task. */
export class Pool implements Source {
  #shares: Share[];
  /** Tasks at work with people whom others at work hold too. Nobody is free for anything new before they end. */
  readonly #doubled: Share[] = [];
  /** Tasks that start only once all of `#doubled` have ended. */
  readonly #afterDoubled = new Set<number>();

  readonly #crossing: number;

  /** `crossing` is how many seconds its people take from one bank to the other. */
  constructor(amount: number, crossing = 0) {
    this.#shares = [{ amount, free: 0, since: 0, last: [], bank: null }];
    this.#crossing = crossing;
  }

  /** How long these people have to cross to where they are wanted. Seconds. */
  crossingOf(share: Share, wish: Wish): number {
    return share.bank !== null && wish.bank !== null && share.bank !== wish.bank
      ? this.#crossing
      : 0;
  }

  /** So many people go at `time`: those who have been free for longest, and where too few are, those free next. */
  leave(amount: number, time: number): Share[] {
    const shares = this.#shares.toSorted(
      (one, other) => Number(one.free > time) - Number(other.free > time) || one.free - other.free,
    );
    return this.#part(shares, amount);
  }

  /** People come at `time`, to where they are wanted, who may still have to finish what they had before. */
  join(shares: readonly Share[], time: number): void {
    this.#shares.push(
      ...shares.map((share) => {
        return { ...share, free: Math.max(share.free, time), since: time, bank: null };
      }),
    );
  }

  /** Takes so many out of these shares, in their order. */
  #part(shares: readonly Share[], amount: number): Share[] {
    const taken: Share[] = [];
    let missing = amount;
    for (const share of shares) {
      if (missing === 0) {
        break;
      }
      const part = Math.min(missing, share.amount);
      missing -= part;
      taken.push({ ...share, amount: part });
      this.#shares.splice(this.#shares.indexOf(share), 1);
      if (part < share.amount) {
        this.#shares.push({ ...share, amount: share.amount - part });
      }
    }
    return taken;
  }

  freeAt(wish: Wish): number {
    const { amount } = wish;
    const there = (share: Share) => share.free + this.crossingOf(share, wish);
    const shares = [...this.#shares].sort((one, other) => there(one) - there(other));
    const ended = amount > 0 ? Math.max(0, ...this.#doubled.map(({ free }) => free)) : 0;
    let missing = amount;
    for (const share of shares) {
      missing -= share.amount;
      if (missing <= 0) {
        return Math.max(there(share), ended);
      }
    }
    throw new Error(`A pool is asked for ${missing} more than it has.`);
  }

  /**
   * Rather people from tasks that must be finished anyway, then those whom nobody has had yet, then those free for
   * longest: a late finish of whoever had them costs least. Where people have to cross, first those who are on the
   * bank, the last to have come free before all, so that as few as may be change sides.
   */
  take(wish: Wish, start: number, finish: number, freedBy: ReadonlySet<number>): Share[] {
    const rank = ({ last }: Share) => {
      if (last.length === 0) {
        return 1;
      }
      return last.every((task) => freedBy.has(task)) ? 0 : 2;
    };
    const side = ({ bank }: Share) => (bank === wish.bank ? 0 : bank === null ? 1 : 2);
    const free = this.#shares.filter((share) => share.free + this.crossingOf(share, wish) <= start);
    free.sort((one, other) =>
      this.#crossing > 0
        ? side(one) - side(other) || other.free - one.free
        : rank(one) - rank(other) || one.free - other.free,
    );
    const taken = this.#part(free, wish.amount);
    this.#shares.push({
      amount: wish.amount,
      free: finish,
      since: 0,
      last: [wish.task],
      bank: wish.bank,
    });
    if (wish.amount > 0 && this.#doubled.length > 0) {
      const before = new Set(taken.flatMap(({ last }) => last));
      const follows = [...before].some((task) => this.#afterDoubled.has(task));
      this.#afterDoubled.add(wish.task);
      if (!follows) {
        taken.push(...this.#doubled.filter(({ last }) => !before.has(last[0] as number)));
      }
    }
    return taken;
  }

  /**
   * Takes what nobody holds first; where all is held the same people serve several tasks until the last is done. Called
   * for the last to finish first, so that of those who share people it is the first to finish that is noted as doubled.
   */
  overlay({ task, amount, bank }: Wish, finish: number): void {
    this.#shares.sort((one, other) => one.last.length - other.last.length);
    const shares: Share[] = [];
    let missing = amount;
    for (const share of this.#shares) {
      const part = Math.min(missing, share.amount);
      missing -= part;
      if (part > 0) {
        if (share.last.length > 0) {
          this.#doubled.push({ amount: part, free: finish, since: 0, last: [task], bank });
        }
        const free = Math.max(share.free, finish);
        shares.push({ ...share, amount: part, free, last: [...share.last, task], bank });
      }
      if (part < share.amount) {
        shares.push({ ...share, amount: share.amount - part });
      }
    }
    this.#shares = shares;
  }
}
