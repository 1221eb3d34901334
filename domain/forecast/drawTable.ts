import type { Minutes } from '../tasks/task.ts';
import type { Shape } from './forecast.ts';
import { type Beta, betaQuantile, pertBeta } from './pert.ts';
import { triangularQuantile } from './triangular.ts';

/**
 * A table that turns a random 32-bit number into a place between quick (0) and slow (1): the inverse
 * of the distribution function, in straight pieces.
 *
 * The pieces crowd towards both ends by halving (shares 1/2 to 1/4, 1/4 to 1/8 ... each cut into
 * `pieces`), because there the curve is steepest; the piece is found from the number's leading zero.
 * Each piece holds two numbers: its value at 0 and its slope, both over the number counted from its end.
 */
const pieces = 32;
const halvings = 12;
const perSide = pieces * halvings + 1;

/** Numbers in one table: two sides, two numbers a piece. */
export const tableSize = 4 * perSide;

/** Share of the whole, counted from its end of the curve, at which piece `index` of a side begins. */
function lowerEdge(index: number): number {
  if (index === perSide - 1) return 0;
  const level = Math.floor(index / pieces);
  return 2 ** -(level + 2) * (1 + (index % pieces) / pieces);
}

/**
 * Fills one side. `quantile` answers the distance from the side's end for a share counted from there,
 * and is asked in falling order; `place` turns that distance into a place between quick and slow.
 */
function fillSide(
  table: Float64Array,
  from: number,
  quantile: (share: number) => number,
  place: (distance: number) => number,
): void {
  let upperShare = 0.5;
  let upperPlace = place(quantile(upperShare));
  for (let level = 0; level <= halvings; level++) {
    const first = level * pieces;
    const last = level === halvings ? first : first + pieces - 1;
    for (let index = last; index >= first; index--) {
      const share = lowerEdge(index);
      const value = place(quantile(share));
      const slope = (upperPlace - value) / (upperShare - share);
      table[from + 2 * index] = value - slope * share;
      // The random number counts in 2^-32, shares in 1.
      table[from + 2 * index + 1] = slope / 2 ** 32;
      upperShare = share;
      upperPlace = value;
    }
  }
}

/** Writes the table of one three-point estimate with quick < slow into `table`, starting at `at`. */
export function fillTable(table: Float64Array, at: number, shape: Shape, minutes: Minutes): void {
  const { quick, likely, slow } = minutes;
  const lower = at;
  const upper = at + 2 * perSide;
  if (shape === 'triangular') {
    const likelyAt = (likely - quick) / (slow - quick);
    const unit = { quick: 0, likely: likelyAt, slow: 1 };
    const mirrored = { quick: 0, likely: 1 - likelyAt, slow: 1 };
    fillSide(
      table,
      lower,
      (share) => triangularQuantile(unit, share),
      (x) => x,
    );
    fillSide(
      table,
      upper,
      (share) => triangularQuantile(mirrored, share),
      (x) => 1 - x,
    );
    return;
  }
  const { alpha, beta, logB } = pertBeta(minutes);
  fillSide(table, lower, fallingQuantile({ alpha, beta, logB }), (x) => x);
  fillSide(table, upper, fallingQuantile({ alpha: beta, beta: alpha, logB }), (x) => 1 - x);
}

/** Neighbouring shares have neighbouring quantiles: each answer is the first guess for the next. */
function fallingQuantile(shape: Beta): (share: number) => number {
  let guess: number | undefined;
  return (share) => {
    if (share === 0) return 0;
    guess = betaQuantile(shape, share, guess);
    return guess;
  };
}

/**
 * The place between quick (0) and slow (1) for the random number `bits` in the table that starts at
 * `at`. `bits` is any 32-bit whole number as JavaScript's bit operators give it: negative ones are the
 * upper half.
 */
export function lookUp(table: Float64Array, at: number, bits: number): number {
  const upper = bits < 0;
  // Counted from the nearer end: 0 to 2^31 - 1.
  const count = upper ? ~bits : bits;
  const level = Math.clz32(count) - 1;
  const index =
    level >= halvings ? perSide - 1 : level * pieces + ((count >>> (25 - level)) & (pieces - 1));
  const from = at + 2 * index + (upper ? 2 * perSide : 0);
  return table[from]! + table[from + 1]! * count;
}
