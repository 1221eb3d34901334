import type { LaunchRules } from '../../kit/kit.ts';
import { balanceBehind, type Girder } from '../balance.ts';
import { hair } from './makeStage.ts';

/** What keeps the margin at a place: bays decked, in rising order, weights on the tail in kilograms, the balance then. */
export type Held = {
  readonly decked: number[];
  readonly counterweight: number;
  readonly balance: number;
};

/**
 * The fewest rear bays to deck, besides those decked already, and then the fewest weights on the tail, so that the
 * margin is kept with the tip there; null where neither will do. A longer bridge behind helps most, a deck on its
 * rear bays next: weights are carried on and off again for nothing else.
 */
export function whatHolds(
  girder: Girder,
  bays: number,
  before: readonly number[],
  rules: LaunchRules,
  tip: number,
): Held | null {
  const { mass = 0, most = 0 } = rules.counterweight ?? {};
  const choices = deckings(bays, before, rules.deckEarly);
  for (let weights = 0; weights <= most; weights += 1) {
    const counterweight = weights * mass;
    for (const decked of choices) {
      const balance = balanceBehind(girder, { tip, bays, decked, counterweight });
      if (balance !== null && balance >= rules.margin - hair) {
        return { decked, counterweight, balance };
      }
    }
  }
  return null;
}

/** None more decked, the rearmost, the two rearmost ... as far as the kit lets so many be decked early. */
export function deckings(bays: number, before: readonly number[], most: number): number[][] {
  const found: number[][] = [];
  for (let count = 0; count <= bays; count += 1) {
    const rear = Array.from({ length: count }, (_, at) => bays - at);
    const decked = [...new Set([...before, ...rear])].sort((a, b) => a - b);
    if (decked.length > Math.max(most, before.length)) {
      break;
    }
    found.push(decked);
  }
  return found;
}

/** Furthest that the tip may go with the margin kept, metres ahead of the front rollers. */
export function furthest(
  girder: Girder,
  bays: number,
  decked: readonly number[],
  margin: number,
): number {
  return (balanceBehind(girder, { tip: 0, bays, decked }) ?? 0) - margin;
}
