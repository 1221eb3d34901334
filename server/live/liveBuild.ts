import type { Entry, NewEntry } from '#domain/progress/entry.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import { diffState } from '#shared/applyDelta.ts';
import type { Ledger, StoredReceipt } from '../ledger/ledger.ts';
import { DeltaRing } from './deltaRing.ts';
import { Feeds } from './feeds.ts';
import { sseEvent } from './sse.ts';

const page = 500;

/** Told of every change of state after it is safely kept. */
export type OnChange = (before: BuildState, after: BuildState) => void;

/** One build in memory: the fold of its record, its feeds, and the line in which its commands wait. */
export class LiveBuild {
  readonly build: string;
  readonly feeds = new Feeds();
  readonly #ledger: Ledger;
  readonly #ring = new DeltaRing();
  readonly #onChange = new Set<OnChange>();
  #state: BuildState = emptyBuild;
  #line: Promise<unknown> = Promise.resolve();
  /** After a storage failure nobody knows what was kept: the record is read again before anything is decided. */
  #doubtful = true;

  constructor(build: string, ledger: Ledger) {
    this.build = build;
    this.#ledger = ledger;
  }

  get state(): BuildState {
    return this.#state;
  }

  /** Tells the listener of every change until the answer is called. */
  onChange(listener: OnChange): () => void {
    this.#onChange.add(listener);
    return () => void this.#onChange.delete(listener);
  }

  /** Events that a device that knows the record up to `after` has missed; null when it must take a new snapshot. */
  since(after: number): readonly string[] | null {
    return this.#ring.since(after, this.#state.number);
  }

  /** Runs one piece of work at a time, on a state that is the record's. Rejects as the work does. */
  serial<Value>(work: () => Promise<Value>): Promise<Value> {
    const turn = this.#line.then(async () => {
      if (this.#doubtful) await this.#catchUp();
      return work();
    });
    this.#line = turn.catch(() => {});
    return turn;
  }

  /** Reads the record if that is still to be done. */
  ready(): Promise<void> {
    return this.serial(async () => {});
  }

  /** Keeps what a command left, then shows it to everyone. Only inside `serial`. */
  async keep(entries: readonly NewEntry[], receipt: StoredReceipt): Promise<void> {
    const after = this.#state.number;
    const numbered = entries.map(
      (entry, place): Entry => ({ number: after + 1 + place, ...entry }),
    );
    const texts = numbered.map((entry) => JSON.stringify(entry));
    try {
      await this.#ledger.append({ build: this.build, after, texts, receipt });
    } catch (error) {
      this.#doubtful = true;
      throw error;
    }
    // What is folded is what was stored, not what was meant.
    this.#fold(texts);
  }

  async #catchUp(): Promise<void> {
    for (;;) {
      const entries = await this.#ledger.entries(this.build, this.#state.number, page);
      this.#fold(entries.map(({ text }) => text));
      if (entries.length < page) break;
    }
    this.#doubtful = false;
  }

  #fold(texts: readonly string[]): void {
    const first = this.#state;
    for (const text of texts) {
      const entry = JSON.parse(text) as Entry;
      const before = this.#state;
      this.#state = evolve(before, entry);
      const delta = diffState(before, this.#state, entry.kind);
      this.#ring.push(delta);
      if (this.feeds.count > 0) this.feeds.send(sseEvent('delta', delta, delta.number));
    }
    if (this.#state !== first) for (const tell of this.#onChange) tell(first, this.#state);
  }
}
