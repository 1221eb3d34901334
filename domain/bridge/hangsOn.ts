import type { Kit } from '../kit/kit.ts';
import { designBridge } from './design.ts';
import type { Ground } from './ground.ts';
import { groundAdvice } from './groundAdvice.ts';
import { type GroundField, groundFields } from './groundFields.ts';
import { groundNumbers } from './groundNumbers.ts';

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
  return groundFields
    .filter(({ get }) => get(ground) === null)
    .map(({ field, kind, set }) => {
      const { least, most } = groundNumbers[kind];
      const values = [least, least + (most - least) / 20, (least + most) / 2, most];
      const answers = new Set(values.map((value) => answer(set(ground, value), kit)));
      return { field, kind, decides: answers.size > 1 };
    });
}

/** All of an answer that a person would act on. */
function answer(ground: Ground, kit: Kit): string {
  const designed = designBridge(ground, kit, '');
  const bridge = designed.ok ? designed.value : null;
  const advice = groundAdvice(ground, kit, bridge, null).map(({ code, bank }) => [code, bank]);
  const limits = designed.ok ? [] : designed.reason.map(({ of }) => of);
  const built = bridge && [
    bridge.bays,
    bridge.nose,
    bridge.stages.map(({ bays, tip }) => [bays, tip]),
  ];
  return JSON.stringify([built, limits, advice]);
}
