import type { Body, Run } from './body.ts';
import { runsOf, tailOf } from './body.ts';
import { centreOfGravity } from './centreOfGravity.ts';
import { bearersUnder, type Reaction, type Rollers, reactionsOn } from './reactions.ts';
import { type Stiffness, tipSag } from './tipSag.ts';

/** A body with its mass worked out once, for looking at it in many places. Metres and kilograms. */
export type Weighed = {
  readonly runs: readonly Run[];
  readonly kilograms: number;
  readonly behindTip: number;
  /** From the tip of the whole nose back to the tail, and to the foremost end that is still on. */
  readonly length: number;
  readonly front: number;
};

/** Null for a body without mass. */
export function weigh(body: Body): Weighed | null {
  const runs = runsOf(body);
  const centre = centreOfGravity(runs);
  return (
    centre && {
      runs,
      ...centre,
      length: tailOf(body.girder, body.bays),
      front: runs[0]?.from ?? 0,
    }
  );
}

/** A weighed body with its tip so far ahead of the front rollers. Metres ahead of them; newtons. */
export type Placed = {
  readonly centre: number;
  readonly tail: number;
  readonly landed: boolean;
  readonly reactions: readonly [Reaction, Reaction];
  /**
   * Metres that the centre of gravity may still move ahead before the bridge tips: to the front rollers, and over the
   * landing rollers once the tip rests there. Negative: it tips.
   */
  readonly margin: number;
};

/** Where a body rests with its tip there. `landed` says whether the far rollers take weight. */
export function placeAt(body: Weighed, tip: number, landed: boolean, rollers: Rollers): Placed {
  const centre = tip - body.behindTip;
  const tail = tip - body.length;
  const bearers = bearersUnder({ centre, tail, landed }, rollers);
  return {
    centre,
    tail,
    landed,
    reactions: reactionsOn(bearers, body.kilograms, centre),
    margin: (landed ? rollers.landsAt : 0) - centre,
  };
}

/**
 * Sag of the tip in the air, metres; null once it has landed or where the kit gives no stiffness. Until the front
 * rollers carry anything the bridge lies on them level, and only the part ahead of them bends.
 */
export function sagAt(
  body: Weighed,
  tip: number,
  placed: Placed,
  stiffness: Stiffness | null,
): number | null {
  if (!stiffness || placed.landed) {
    return null;
  }
  const level: Reaction = { of: 'front', at: 0, newtons: 0 };
  const bearers = placed.reactions[0].of === 'front' ? placed.reactions : ([level, level] as const);
  return tip > body.front ? tipSag(body.runs, tip, bearers, stiffness) : 0;
}
