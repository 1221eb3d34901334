import type { Bridge } from './bridge.ts';
import { runsOf } from './statics/body.ts';
import { centreOfGravity } from './statics/centreOfGravity.ts';

/** What the balance hangs on. Metres and kilograms. */
export type Girder = Pick<Bridge, 'bayLength' | 'nose' | 'noseLength' | 'masses'>;

/** How far a launch has got, with the whole nose on. Metres. */
export type LaunchState = {
  /** Nose tip ahead of the front rollers; 0 at the start, negative behind. */
  readonly tip: number;
  /** Bays built, counted from the front. */
  readonly bays: number;
  /** Numbers of the bays that are decked. */
  readonly decked: readonly number[];
  /** Kilograms of weights on the tail; none when absent. */
  readonly counterweight?: number;
};

/**
 * How far the centre of gravity of nose and bridge lies behind the front rollers, in metres; negative is ahead, and
 * the bridge tips unless the tip is held. Null while nothing is built.
 *
 * With x in metres ahead of the front rollers and the nose tip at x = tip, section j (1 is the tip) has its centre at
 * tip - (j - 1/2) s, and bay k at tip - n s - (k - 1/2) b, for n sections of s metres and bays of b metres. Then
 *
 *     balance = - (sum of mass times x) / (sum of mass)
 *
 * over the sections at `masses.nose`, the bays at `masses.bay` and, for those decked, `masses.deck` besides. This is
 * the launching rule of US Army FM 5-277 in the form of moments: the centre of gravity stays behind the rollers until
 * the nose is over the landing rollers.
 */
export function balanceBehind(girder: Girder, state: LaunchState): number | null {
  const { tip, bays, decked, counterweight = 0 } = state;
  const centre = centreOfGravity(runsOf({ girder, bays, decked, sectionsOff: 0, counterweight }));
  return centre && centre.behindTip - tip;
}
