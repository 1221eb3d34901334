import type { Stage } from '../bridge.ts';
import { tidy } from '../way.ts';

/** Tolerance on lengths, metres: sums of decimal lengths are not exact. */
export const hair = 1e-9;

export type Move = Pick<
  Stage,
  'bays' | 'decked' | 'metres' | 'tip' | 'balance' | 'lands' | 'counterweight'
>;

/** Adds the running number and the metres moved in all, rounded to a tenth of a millimetre for people to read. */
export function makeStage(before: readonly Stage[], move: Move): Stage {
  return {
    stage: before.length + 1,
    bays: move.bays,
    decked: move.decked,
    metres: tidy(move.metres),
    moved: tidy(move.tip),
    tip: tidy(move.tip),
    balance: move.balance === null ? null : tidy(move.balance),
    lands: move.lands,
    noseOff: [],
    ...(move.counterweight ? { counterweight: move.counterweight } : {}),
  };
}
