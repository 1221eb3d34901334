import type { LaunchRules } from '../../kit/kit.ts';
import { balanceBehind } from '../balance.ts';
import type { Stage } from '../bridge.ts';
import { deckings, furthest } from './holding.ts';
import type { Launch } from './launch.ts';
import { hair, makeStage } from './makeStage.ts';

/** Moves are set out to the decimetre, the finest that a crew stops a bridge at. Metres. */
const step = 0.1;

/**
 * The order with the fewest moves until all bays are built, with `room` metres for the girder behind the front
 * rollers: build as many bays as there is room for, move as far as the margin and the longest move allow, and again.
 * No order has fewer: more bays let the tip go further, a tip further on makes room for more bays, and neither is ever
 * worse to have. Where the bare girder cannot go far enough for the next bay, rear bays are decked first, as few as
 * will do. Null where that does not help either: the room is too short.
 */
export function freeApproach(launch: Launch, rules: LaunchRules, room: number): Stage[] | null {
  const { girder, bays, landsAt } = launch;
  const stages: Stage[] = [];
  let tip = 0;
  let built = 0;
  let decked: number[] = [];
  for (;;) {
    const fit = Math.floor((room + tip - girder.noseLength) / girder.bayLength + hair);
    built = Math.min(bays, Math.max(built, fit));
    if (built === bays) {
      return stages;
    }
    // Where the tip has to be for one bay more, and how far each decking lets it go.
    const wanted = girder.noseLength + (built + 1) * girder.bayLength - room;
    const limit = (decks: readonly number[]) =>
      onTheStep(Math.min(landsAt - step, furthest(girder, built, decks, rules.margin)));
    const decks = deckings(built, decked, rules.deckEarly).find(
      (option) => limit(option) >= wanted - hair,
    );
    if (decks === undefined) {
      return null;
    }
    const next = Math.min(limit(decks), onTheStep(tip + rules.longestMove));
    decked = decks;
    const balance = balanceBehind(girder, { tip: next, bays: built, decked });
    stages.push(
      makeStage(stages, {
        bays: built,
        decked,
        metres: next - tip,
        tip: next,
        balance,
        lands: false,
      }),
    );
    tip = next;
  }
}

function onTheStep(metres: number): number {
  return Math.floor(metres / step + hair) * step;
}
