import type { Bridge } from '#domain/bridge/bridge.ts';
import { type Choices, choices } from '#domain/bridge/choices.ts';
import { designBridge, type Wish } from '#domain/bridge/design.ts';
import { type Footing, footings } from '#domain/bridge/footings.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { hangsOn, type Unknown } from '#domain/bridge/hangsOn.ts';
import { type StageStatics, stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { criticalPath } from '#domain/schedule/criticalPath.ts';
import type { Bank } from '#domain/tasks/effect.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';

/** What a ground means for kit and work, beside the bridge itself. */
export type DesignFacts = {
  readonly choice: Choices | null;
  readonly unknowns: readonly Unknown[];
  /** Unknown fields that the answer hangs on. */
  readonly decide: ReadonlySet<string>;
  readonly stages: readonly StageStatics[];
  readonly footings: readonly Footing[];
  /** Minutes by which each soft bank moves the opening at the least. */
  readonly softBanks: readonly { readonly bank: Bank; readonly minutes: number }[];
};

export const noFacts: DesignFacts = {
  choice: null,
  unknowns: [],
  decide: new Set(),
  stages: [],
  footings: [],
  softBanks: [],
};

/** Works them out: some tenths of a second, so not while a key is down. */
export function designFacts(ground: Ground, kit: Kit, hash: string, wish: Wish): DesignFacts {
  const designed = designBridge(ground, kit, hash, wish);
  const stages = designed.ok ? stageStatics(designed.value, kit, ground.rollerFall ?? 0) : [];
  const unknowns = hangsOn(ground, kit);
  return {
    choice: choices(ground, kit, hash),
    unknowns,
    decide: new Set(unknowns.filter(({ decides }) => decides).map(({ field }) => field)),
    stages,
    footings: footings(stages, kit, ground),
    softBanks: designed.ok ? softCosts(designed.value, kit) : [],
  };
}

/** The longest chain of the order of work with that bank soft, less the same with it firm. */
function softCosts(bridge: Bridge, kit: Kit): DesignFacts['softBanks'] {
  const soft = bridge.softBanks ?? [];
  const least = (banks: readonly Bank[]): number => {
    const work = orderOfWork({ ...bridge, softBanks: [...banks] }, kit);
    const path = work.ok ? criticalPath(work.value, 'pert') : work;
    return path.ok ? path.value.minutes : 0;
  };
  return soft.map((bank) => ({
    bank,
    minutes: least(soft) - least(soft.filter((one) => one !== bank)),
  }));
}
