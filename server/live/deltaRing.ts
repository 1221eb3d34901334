import type { DeltaFrame } from '#shared/wire.ts';
import { sseEvent } from './sse.ts';

/** Deltas kept: more to catch up on, and a packed snapshot is smaller. */
const room = 64;

/** Characters that are sent to catch up: the same, for a few large deltas. */
const most = 256_000;

/** The last deltas of a build, so that a device that was away a short while gets what it missed. */
export class DeltaRing {
  #deltas: DeltaFrame[] = [];

  push(delta: DeltaFrame): void {
    this.#deltas.push(delta);
    if (this.#deltas.length > room) this.#deltas.shift();
  }

  /**
   * The events after a number, up to the present `last`; null when a new snapshot is the better way, or the only one:
   * when deltas are gone, or `after` lies ahead of the record, as it may once an older backup was restored.
   */
  since(after: number, last: number): readonly string[] | null {
    if (after === last) return [];
    const first = this.#deltas[0]?.number ?? last + 1;
    if (after > last || after < first - 1) return null;
    const events = this.#deltas
      .slice(after - first + 1)
      .map((delta) => sseEvent('delta', delta, delta.number));
    return events.reduce((sum, { length }) => sum + length, 0) > most ? null : events;
  }
}
