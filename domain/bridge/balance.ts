import type { Bridge } from './bridge.ts';

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
  const sectionLength = girder.nose === 0 ? 0 : girder.noseLength / girder.nose;
  const joint = state.tip - girder.noseLength;
  let mass = 0;
  let moment = 0;
  const add = (kilograms: number, centre: number) => {
    mass += kilograms;
    moment += kilograms * centre;
  };
  for (let section = 1; section <= girder.nose; section += 1) {
    add(girder.masses.nose, state.tip - (section - 0.5) * sectionLength);
  }
  for (let bay = 1; bay <= state.bays; bay += 1) {
    const decked = state.decked.includes(bay);
    add(
      girder.masses.bay + (decked ? girder.masses.deck : 0),
      joint - (bay - 0.5) * girder.bayLength,
    );
  }
  return mass === 0 ? null : -moment / mass;
}
