import type { Kit } from '../../kit/kit.ts';
import type { Bridge, Stage } from '../bridge.ts';
import type { Body } from './body.ts';
import { type MoveStatics, moveStatics } from './moveStatics.ts';
import { sagAt, weigh } from './place.ts';
import { type Push, pushOf } from './push.ts';
import type { Reaction, Rollers } from './reactions.ts';
import type { Stiffness } from './tipSag.ts';

/** A stage of the launch with its statics. Metres, kilograms and newtons; lengths ahead of the front rollers. */
export type StageStatics = {
  readonly stage: number;
  readonly bays: number;
  readonly decked: readonly number[];
  /** Nose sections on during the move. */
  readonly nose: number;
  readonly counterweight: number;
  readonly metres: number;
  readonly moved: number;
  readonly kilograms: number;
  readonly lands: boolean;
  /** Ahead of the front rollers at the end of the move, negative behind; where it starts is `metres` further back. */
  readonly centreOfGravity: number;
  /** Least distance from tipping over the whole move; see `MoveStatics`. */
  readonly margin: number;
  readonly marginInto: number;
  readonly ratio: number | null;
  /** At the end of the move, just before the far rollers take weight where it lands. */
  readonly reactions: readonly Reaction[];
  readonly mostReactions: MoveStatics['most'];
  readonly overhang: number;
  readonly push: Push | null;
  readonly tipSag: number | null;
  /** Where the nose meets the landing rollers on the landing move: metres above the line of the front rollers. */
  readonly meets: number | null;
  /** The length swept by bridge and vehicle: nobody but the move's own people stands in, on or under it. */
  readonly keepOff: { readonly from: number; readonly to: number };
};

/** Rollers of a launched bridge. */
export function rollersOf(bridge: Bridge, kit: Kit): Rollers {
  return { behind: kit.launch?.rollers.behind ?? [], landsAt: bridge.landsAt };
}

/** Null where the kit does not give it for all that sticks out. */
export function stiffnessOf(kit: Kit, nose: number): Stiffness | null {
  const bay = kit.bay.stiffness;
  const own = kit.nose?.stiffness ?? (nose === 0 ? bay : undefined);
  return bay === undefined || own === undefined ? null : { bay, nose: own };
}

/**
 * The statics of every move of a launched bridge, in order; none for a floated one. `fall` is metres per metre that
 * the roller line falls towards the gap.
 */
export function stageStatics(bridge: Bridge, kit: Kit, fall: number): StageStatics[] {
  const rules = kit.launch;
  if (!rules) {
    return [];
  }
  const rollers = rollersOf(bridge, kit);
  const stiffness = stiffnessOf(kit, bridge.nose);
  return bridge.stages.flatMap((stage, row) => {
    const body = bodyAt(bridge, row);
    const weighed = weigh(body);
    if (!weighed) {
      return [];
    }
    const move = {
      from: stage.tip - stage.metres,
      to: stage.tip,
      landed: landedBefore(bridge, row),
    };
    const found = moveStatics(weighed, move, rollers, stiffness);
    return {
      ...whatMoves(stage, body),
      kilograms: weighed.kilograms,
      centreOfGravity: found.end.centre,
      margin: found.margin.metres,
      marginInto: found.margin.into,
      ratio: found.ratio,
      reactions: found.end.reactions,
      mostReactions: found.most,
      overhang: found.overhang,
      push: pushOf(weighed.kilograms, fall, rules),
      tipSag: found.sag?.metres ?? null,
      meets: stage.lands
        ? meetingHeight(sagAt(weighed, stage.tip, found.end, stiffness), fall * stage.tip)
        : null,
      keepOff: { from: found.start.tail - rules.vehicleRoom, to: stage.tip - weighed.front },
    };
  });
}

/** Whether the tip rests on the far rollers before the move of `bridge.stages[row]`. */
export function landedBefore(bridge: Bridge, row: number): boolean {
  return bridge.stages.slice(0, row).some(({ lands }) => lands);
}

/** Height of the hanging tip above the level of the front rollers, where their line falls by `drop` to there. */
function meetingHeight(sag: number | null, drop: number): number | null {
  return sag === null ? null : -sag - drop;
}

/** What stands on the rollers during the move of `bridge.stages[row]`. */
export function bodyAt(bridge: Bridge, row: number): Body {
  const stage = bridge.stages[row];
  const off = bridge.stages.slice(0, row).flatMap(({ noseOff }) => noseOff ?? []);
  return {
    girder: bridge,
    bays: stage?.bays ?? 0,
    decked: stage?.decked ?? [],
    sectionsOff: off.length,
    counterweight: stage?.counterweight ?? 0,
  };
}

function whatMoves(stage: Stage, body: Body) {
  const { bays, decked, metres, moved, lands } = stage;
  const nose = body.girder.nose - body.sectionsOff;
  return {
    stage: stage.stage,
    bays,
    decked,
    nose,
    counterweight: body.counterweight,
    metres,
    moved,
    lands,
  };
}
