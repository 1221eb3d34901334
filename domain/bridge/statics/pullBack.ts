import type { Kit } from '../../kit/kit.ts';
import type { Bridge } from '../bridge.ts';
import type { Stopped } from './heldNow.ts';
import { placeAt, weigh } from './place.ts';
import { bodyAt, landedBefore, rollersOf } from './stageStatics.ts';

/** One move back, and what comes before and after it. Metres. */
export type PullBack = {
  /** The stage whose move is undone. */
  readonly stage: number;
  readonly metres: number;
  /** Nose sections (1 is the tip) that go back on first, while the tip still rests on the far rollers. */
  readonly noseOn: readonly number[];
  /** Kilograms on the tail before it moves. */
  readonly counterweight: number;
  /** Bays and decks that stand while it moves. */
  readonly bays: number;
  readonly decked: readonly number[];
  /** Least distance from tipping, metres: where it starts from, for the centre of gravity goes back with the bridge. */
  readonly margin: number;
  /** Decks, then bays, that come off at the tail before the next move back. */
  readonly decksOff: readonly number[];
  readonly baysOff: readonly number[];
};

/**
 * The moves that bring a stopped launch back to the near bank, in order: each undoes one stage with the same bays,
 * decks, nose and weights that held it on its way out, and what was added for that stage comes off before the next.
 */
export function pullBack(bridge: Bridge, kit: Kit, stopped: Stopped): PullBack[] {
  const moves: PullBack[] = [];
  const rollers = rollersOf(bridge, kit);
  for (let row = Math.min(stopped.stage, bridge.stages.length) - 1; row >= 0; row -= 1) {
    const stage = bridge.stages[row];
    const body = stage && weigh(bodyAt(bridge, row));
    if (!stage || !body) {
      break;
    }
    const here = row === stopped.stage - 1;
    const gone = here ? Math.min(Math.max(0, stopped.into), stage.metres) : stage.metres;
    const before = bridge.stages[row - 1];
    const from = stage.tip - stage.metres + gone;
    moves.push({
      stage: stage.stage,
      metres: gone,
      noseOn: here ? [] : [...(stage.noseOff ?? [])].reverse(),
      counterweight: stage.counterweight ?? 0,
      bays: stage.bays,
      decked: stage.decked,
      margin: placeAt(body, from, landedBefore(bridge, row), rollers).margin,
      decksOff: stage.decked.filter((bay) => !before?.decked.includes(bay)),
      baysOff: Array.from({ length: stage.bays - (before?.bays ?? 0) }, (_, at) => stage.bays - at),
    });
  }
  return moves.filter(({ metres }) => metres > 0);
}
