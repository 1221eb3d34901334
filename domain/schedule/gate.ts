import type { Share, Source, Wish } from './source.ts';

/**
 * A zone whose room has no limit: only a keep-off task makes anybody wait. It waits for all who are inside, and all who
 * come later wait for it.
 */
export class Gate implements Source {
  /** Keep-off tasks that closed the zone last; all others since have come after them. */
  #closed: Share[] = [];
  #inside: Share[] = [];

  freeAt({ keepOff }: Wish): number {
    const before = keepOff ? [...this.#closed, ...this.#inside] : this.#closed;
    return before.reduce((latest, { free }) => Math.max(latest, free), 0);
  }

  take(wish: Wish, _start: number, finish: number): Share[] {
    const own: Share = {
      amount: wish.amount,
      free: finish,
      since: 0,
      last: [wish.task],
      bank: null,
    };
    if (wish.keepOff) {
      const before = this.#inside.length > 0 ? this.#inside : this.#closed;
      this.#closed = [own];
      this.#inside = [];
      return before;
    }
    this.#inside.push(own);
    return this.#closed.map((share) => ({ ...share, amount: wish.amount }));
  }

  overlay(wish: Wish, finish: number): void {
    const own: Share = {
      amount: wish.amount,
      free: finish,
      since: 0,
      last: [wish.task],
      bank: null,
    };
    if (wish.keepOff) {
      this.#closed.push(own);
    }
    // Also the keep-off task counts as inside: the next one waits for it as for everybody at work.
    this.#inside.push(own);
  }
}
