import type { Carry } from '../../kit/kit.ts';
import { circuitMinutes } from './carrying.ts';

/** Carrying deck out on one side of the bridge and going back on the other: nobody turns, nobody meets. */
export type DeckCircuit = {
  /** Metres once round. */
  readonly metres: number;
  /** Minutes once round for one piece. */
  readonly round: number;
  /** Teams that keep the place of laying busy: more would stand in a queue. */
  readonly teams: number;
  /** Minutes until all pieces are laid by so many teams. */
  readonly minutes: (pieces: number, teams: number) => number;
};

/**
 * The one-way circuit to a place `walk` metres from the stack. Pieces are set down one after the other, each `set`
 * minutes, so that the place of laying takes one every `set` minutes and so many teams one every `round / teams`: the
 * slower of the two is the pace (the cycle rule of earthmoving and of any ring of carriers).
 */
export function deckCircuit(carry: Carry, walk: number): DeckCircuit {
  const round = circuitMinutes(carry, walk);
  const way = carry.lift + walk / carry.loaded + carry.set;
  return {
    metres: 2 * walk,
    round,
    teams: carry.set > 0 ? Math.max(1, Math.ceil(round / carry.set - 1e-9)) : 1,
    minutes: (pieces, teams) =>
      pieces === 0 ? 0 : way + (pieces - 1) * Math.max(carry.set, round / teams),
  };
}
