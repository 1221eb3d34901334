import type { Kit } from '../../kit/kit.ts';
import type { Bridge } from '../bridge.ts';
import type { Ground } from '../ground.ts';
import { stageStatics } from '../statics/stageStatics.ts';

/** What a hold point before a move should find, reckoned beforehand. Metres, metres per second, kilonewtons. */
export type HoldNumbers = {
  readonly stage: number;
  readonly bays: number;
  readonly decked: number;
  /** Least margin in the move, what the kit asks for, and what is left over that. */
  readonly margin: number;
  readonly wanted: number;
  readonly over: number;
  /** Most wind that the kit moves in, and what was measured; null where unknown. */
  readonly windMost: number | null;
  readonly wind: number | null;
  /** Most on one line of rollers during the move. */
  readonly rollerKilonewtons: number;
};

/**
 * The numbers for the hold before each move of a launched bridge; none for a floated one. The fall of the rollers sways
 * the push and not the margin, so that a ground of which nothing is known gives the same margins.
 */
export function holdNumbers(
  bridge: Bridge,
  kit: Kit,
  ground: Pick<Ground, 'rollerFall' | 'wind'>,
): HoldNumbers[] {
  const wanted = kit.launch?.margin ?? 0;
  return stageStatics(bridge, kit, ground.rollerFall ?? 0).map((stage) => ({
    stage: stage.stage,
    bays: stage.bays,
    decked: stage.decked.length,
    margin: stage.margin,
    wanted,
    over: stage.margin - wanted,
    windMost: kit.limits?.wind ?? null,
    wind: ground.wind ?? null,
    rollerKilonewtons:
      Math.max(
        0,
        ...stage.mostReactions.filter(({ of }) => of !== 'tail').map(({ newtons }) => newtons),
      ) / 1000,
  }));
}
