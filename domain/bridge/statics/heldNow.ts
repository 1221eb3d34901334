import type { Kit } from '../../kit/kit.ts';
import type { Bridge } from '../bridge.ts';
import { momentRatio } from './momentRatio.ts';
import { type Placed, placeAt, sagAt, weigh } from './place.ts';
import { type Push, pushOf } from './push.ts';
import { bodyAt, landedBefore, rollersOf, stiffnessOf } from './stageStatics.ts';

/** Where a launch has stopped: so many metres into the move of a stage. */
export type Stopped = { readonly stage: number; readonly into: number };

/** What holds a bridge that has stopped. Metres and newtons; see `Placed` for the frame. */
export type HeldNow = Placed & {
  readonly moved: number;
  readonly kilograms: number;
  readonly ratio: number | null;
  readonly sag: number | null;
  /** What locks or vehicle must hold for it not to run away, and what it takes to move it; null where the kit does not say. */
  readonly push: Push | null;
  /** Metres it may still go on with the kit's margin kept; less than 0 is past that already. */
  readonly mayGoOn: number;
};

/**
 * What holds a launched bridge that has stopped half-way, by the statics at that very place. Null for a floated bridge
 * and for a stage that there is not.
 */
export function heldNow(bridge: Bridge, kit: Kit, stopped: Stopped, fall: number): HeldNow | null {
  const row = stopped.stage - 1;
  const stage = bridge.stages[row];
  const body = stage && weigh(bodyAt(bridge, row));
  const rules = kit.launch;
  if (!stage || !body || !rules) {
    return null;
  }
  const tip = stage.tip - stage.metres + Math.min(Math.max(0, stopped.into), stage.metres);
  const rollers = rollersOf(bridge, kit);
  const landed = landedBefore(bridge, row);
  const placed = placeAt(body, tip, landed, rollers);
  return {
    ...placed,
    moved: tip,
    kilograms: body.kilograms,
    ratio: momentRatio(body.runs, tip, landed ? rollers.landsAt : 0),
    sag: sagAt(body, tip, placed, stiffnessOf(kit, bridge.nose)),
    push: pushOf(body.kilograms, fall, rules),
    mayGoOn: placed.margin - rules.margin,
  };
}
