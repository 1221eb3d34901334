import type { Kit } from '../kit/kit.ts';
import type { Refusal } from '../refusal.ts';
import type { Result } from '../result.ts';
import type { Bridge } from './bridge.ts';
import { designBridge } from './design.ts';
import type { Ground } from './ground.ts';
import { groundAdvice } from './groundAdvice.ts';
import { type GroundField, groundFields } from './groundFields.ts';
import { groundNumbers } from './groundNumbers.ts';
import { type StageStatics, stageStatics } from './statics/stageStatics.ts';

/** A number that nobody has measured, and whether the answer hangs on it. */
export type Unknown = {
  readonly field: string;
  readonly kind: GroundField['kind'];
  /** Whether bridge, stages or what the ground asks for come out otherwise for one value than for another. */
  readonly decides: boolean;
};

/**
 * Every unknown number of a ground, and whether the answer hangs on it: the bridge is designed with it at either end
 * of its range and between, and the answers are held against each other. What is unknown besides stays unknown.
 */
export function hangsOn(ground: Ground, kit: Kit): Unknown[] {
  const worked = new Map<string, Worked>();
  const answerOf = (asked: Ground) => {
    const key = whatDesigns(asked);
    const known = worked.get(key) ?? workOut(asked, kit);
    worked.set(key, known);
    return answer(asked, kit, known);
  };
  return groundFields
    .filter(({ get }) => get(ground) === null)
    .map(({ field, kind, set }) => {
      const { least, most } = groundNumbers[kind];
      const values = [least, least + (most - least) / 20, (least + most) / 2, most];
      const answers = new Set(values.map((value) => answerOf(set(ground, value))));
      return { field, kind, decides: answers.size > 1 };
    });
}

type Worked = {
  readonly designed: Result<Bridge, Refusal[]>;
  readonly stages: readonly StageStatics[];
};

/** The numbers that bridge and statics follow from: most values tried change neither, and are not worked out again. */
function whatDesigns({ gap, near, far, roomBehind, loadClass, rollerFall }: Ground): string {
  return JSON.stringify([gap, near.setback, far.setback, roomBehind, loadClass, rollerFall]);
}

function workOut(ground: Ground, kit: Kit): Worked {
  const designed = designBridge(ground, kit, '');
  const stages = designed.ok ? stageStatics(designed.value, kit, ground.rollerFall ?? 0) : [];
  return { designed, stages };
}

/** All of an answer that a person would act on. */
function answer(ground: Ground, kit: Kit, { designed, stages }: Worked): string {
  const advice = groundAdvice(ground, kit, stages, null).map(({ code, bank }) => [code, bank]);
  const limits = designed.ok ? [] : designed.reason.map(({ of }) => of);
  const built = designed.ok && [
    designed.value.bays,
    designed.value.nose,
    designed.value.stages.map(({ bays, tip }) => [bays, tip]),
  ];
  return JSON.stringify([built, limits, advice]);
}
