import type { Kit } from '../../kit/kit.ts';
import type { Use } from '../../tasks/fromKit/uses.ts';
import type { Bridge } from '../bridge.ts';
import { partCount } from '../parts.ts';
import { lotsInOrder } from './needs.ts';

/** Parts missing at the tailgate, and the first task that cannot be done without them. */
export type Short = {
  readonly part: string;
  readonly missing: number;
  /** Null where no task says that it uses them. */
  readonly firstTask: string | null;
};

/**
 * What a short count stops first. `counted` is what is there of each part by its id; a part that is not in it is
 * whole. Parts go to bays and sections in the order in which the work wants them, so that a few missing panels stop
 * the last bays and not the first; of parts for the whole bridge the first use is taken.
 */
export function shortParts(
  bridge: Bridge,
  kit: Kit,
  uses: readonly Use[],
  counted: ReadonlyMap<string, number>,
): Short[] {
  const lots = lotsInOrder(bridge, kit, uses);
  return kit.parts.flatMap((part) => {
    const missing =
      partCount(part, bridge.bays, bridge.nose) -
      (counted.get(part.id) ?? Number.POSITIVE_INFINITY);
    if (missing <= 0) {
      return [];
    }
    let left = counted.get(part.id) ?? 0;
    const stopped = lots
      .filter(({ group }) => group === part.group)
      .find(() => {
        left -= part.count;
        return left < 0;
      });
    return { part: part.name, missing, firstTask: stopped?.task || null };
  });
}
