import type { Kit } from '../kit/kit.ts';
import type { Ground } from './ground.ts';
import type { StageStatics } from './statics/stageStatics.ts';

/** What the rollers of a bank press on during the launch. Newtons, square metres and kilopascals. */
export type Footing = {
  readonly bank: 'near' | 'far';
  /** Most on the front or the landing rollers at any point of any move. */
  readonly newtons: number;
  /** Under the kit's own footing; null where the kit does not give its area. */
  readonly pressure: number | null;
  /** Area that the ground wants; null where its strength is unknown. */
  readonly area: number | null;
  /** Whether the kit's footing is too small there; null where either is unknown. */
  readonly widen: boolean | null;
};

/** The footings that the stages of a launch ask of both banks; none for a floated bridge, which has no such stages. */
export function footings(stages: readonly StageStatics[], kit: Kit, ground: Ground): Footing[] {
  const loads = stages.flatMap(({ mostReactions }) => mostReactions);
  if (loads.length === 0) {
    return [];
  }
  const own = kit.limits?.footing ?? null;
  return (['near', 'far'] as const).map((bank) => {
    const roller = bank === 'near' ? 'front' : 'landing';
    const newtons = Math.max(
      0,
      ...loads.filter(({ of }) => of === roller).map((one) => one.newtons),
    );
    const strength = ground[bank].strength ?? null;
    const area = strength === null ? null : newtons / (strength * 1000);
    return {
      bank,
      newtons,
      pressure: own === null ? null : newtons / own / 1000,
      area,
      widen: area === null || own === null ? null : area > own,
    };
  });
}
