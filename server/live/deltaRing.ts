import type { DeltaFrame } from '#shared/wire.ts';

/** The last deltas of a build, so that a device that was away a short while gets what it missed. */
export class DeltaRing {
  readonly #room: number;
  #deltas: DeltaFrame[] = [];

  /** `room` is how many deltas it holds. */
  constructor(room: number) {
    this.#room = room;
  }

  push(delta: DeltaFrame): void {
    this.#deltas.push(delta);
    if (this.#deltas.length > this.#room) this.#deltas = this.#deltas.slice(-this.#room);
  }

  /**
   * The deltas after a number, up to the present `last`; null when they are no longer all here, or when `after` lies
   * ahead of the record, as it may once an older backup was restored.
   */
  since(after: number, last: number): readonly DeltaFrame[] | null {
    if (after === last) return [];
    const first = this.#deltas[0]?.number ?? last + 1;
    if (after > last || after < first - 1) return null;
    return this.#deltas.slice(after - first + 1);
  }
}
