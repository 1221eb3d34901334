import type { Minutes } from '../tasks/task.ts';
import { fillTable, tableSize } from './drawTable.ts';
import type { Shape } from './forecast.ts';

/**
 * The tables of one forecast or of many: each is filled the first time that its shape is asked for, so that forecasts
 * which share them do not pay for it again. Same answers with or without sharing.
 */
export class DrawTables {
  readonly #at = new Map<string, number>();
  // One table at least, so that a task without doubt has numbers to multiply by its range of 0.
  #values = new Float64Array(8 * tableSize);

  /** All tables one after another; another array once a table was added. */
  get values(): Float64Array {
    return this.#values;
  }

  /** How many shapes have been filled. */
  get count(): number {
    return this.#at.size;
  }

  /** Where the table of an estimate begins. */
  at(shape: Shape, minutes: Minutes): number {
    const { quick, likely, slow } = minutes;
    if (slow <= quick) return 0;
    // Where the likely minutes lie between quick and slow is all that the curve depends on.
    const key = `${shape} ${(likely - quick) / (slow - quick)}`;
    const known = this.#at.get(key);
    if (known !== undefined) return known;
    const at = this.#at.size * tableSize;
    if (at + tableSize > this.#values.length) {
      const larger = new Float64Array(2 * this.#values.length);
      larger.set(this.#values);
      this.#values = larger;
    }
    fillTable(this.#values, at, shape, minutes);
    this.#at.set(key, at);
    return at;
  }
}
