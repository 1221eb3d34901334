import type { Bridge } from '#domain/bridge/bridge.ts';
import { type Choices, choices } from '#domain/bridge/choices.ts';
import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { type GroundAdvice, groundAdvice } from '#domain/bridge/groundAdvice.ts';
import { hangsOn } from '#domain/bridge/hangsOn.ts';
import { type WaterRescue, waterRescue } from '#domain/bridge/safety/ringBuoys.ts';
import { type StageStatics, stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { type Stores, storesOf } from '#domain/bridge/stores/stores.ts';
import type { Kit } from '#domain/kit/kit.ts';
import type { Refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { type ChoiceLine, choiceLine } from '../choiceLine.ts';

/** A bridge and all that `spanwright bridge --json` says of it. Metres, kilograms, newtons and minutes. */
export type BridgeAnswer = Omit<Bridge, 'stages'> & {
  /** The stages of the design with their statics; those of a floated bridge have none. */
  readonly stages: readonly (Bridge['stages'][number] & Partial<StageStatics>)[];
  readonly choice: {
    readonly fitting: readonly ChoiceLine[];
    readonly ruledOut: Choices['ruledOut'];
  };
  readonly stores: Stores;
  readonly ground: readonly GroundAdvice[];
  /** Unknown numbers that the answer hangs on, by their place in the ground file. */
  readonly hangsOn: readonly string[];
  readonly rescue: WaterRescue | null;
};

/** Designs the bridge and works out everything about it that needs no plan. */
export function bridgeAnswer(
  ground: Ground,
  kit: Kit,
  hash: string,
): Result<BridgeAnswer, readonly Refusal[]> {
  const designed = designBridge(ground, kit, hash);
  if (!designed.ok) {
    return designed;
  }
  const bridge = designed.value;
  const work = orderOfWork(bridge, kit);
  if (!work.ok) {
    return bad([work.reason]);
  }
  const statics = stageStatics(bridge, kit, ground.rollerFall ?? 0);
  const found = choices(ground, kit, hash);
  return good({
    ...bridge,
    stages: bridge.stages.map((stage, row) => ({ ...statics[row], ...stage })),
    choice: { fitting: found.fitting.map(choiceLine), ruledOut: found.ruledOut },
    stores: storesOf(bridge, kit, work.value),
    ground: groundAdvice(ground, kit, statics, null),
    hangsOn: hangsOn(ground, kit)
      .filter(({ decides }) => decides)
      .map(({ field }) => field),
    rescue: ground.water.depth === 0 ? null : waterRescue(ground.gap),
  });
}
