import type { Girder } from '../balance.ts';

/** What stands on the rollers at one moment. */
export type Body = {
  readonly girder: Girder;
  /** Bays built, counted from the front. */
  readonly bays: number;
  /** Numbers of the bays that are decked. */
  readonly decked: readonly number[];
  /** Nose sections already taken off, from the tip. */
  readonly sectionsOff: number;
  /** Kilograms of weights on the tail. */
  readonly counterweight: number;
};

/** A length of even mass. Metres behind the tip of the whole nose; a weight on one spot has no length. */
export type Run = {
  readonly part: 'nose' | 'bay' | 'counterweight';
  readonly from: number;
  readonly to: number;
  readonly kilograms: number;
};

/** The body as runs of even mass, from the tip to the tail. */
export function runsOf({ girder, bays, decked, sectionsOff, counterweight }: Body): Run[] {
  const runs: Run[] = [];
  const section = girder.nose === 0 ? 0 : girder.noseLength / girder.nose;
  for (let at = sectionsOff; at < girder.nose; at += 1) {
    const from = at * section;
    runs.push({ part: 'nose', from, to: from + section, kilograms: girder.masses.nose });
  }
  for (let bay = 1; bay <= bays; bay += 1) {
    const from = girder.noseLength + (bay - 1) * girder.bayLength;
    const kilograms = girder.masses.bay + (decked.includes(bay) ? girder.masses.deck : 0);
    runs.push({ part: 'bay', from, to: from + girder.bayLength, kilograms });
  }
  if (counterweight > 0) {
    const tail = tailOf(girder, bays);
    runs.push({ part: 'counterweight', from: tail, to: tail, kilograms: counterweight });
  }
  return runs;
}

/** Metres from the tip of the whole nose back to the tail. */
export function tailOf(girder: Girder, bays: number): number {
  return girder.noseLength + bays * girder.bayLength;
}
