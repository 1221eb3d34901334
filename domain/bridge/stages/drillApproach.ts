import type { LaunchRules } from '../../kit/kit.ts';
import { balanceBehind } from '../balance.ts';
import type { Stage } from '../bridge.ts';
import type { Launch } from './launch.ts';
import { hair, makeStage } from './makeStage.ts';

/**
 * The kit's own drill until all bays are built: after each lot the bridge moves by the length just built, so that the
 * next lot is built in the same place, if the balance without any deck then keeps the margin and the tip stays short
 * of the far rollers; otherwise the next lot is built first.
 */
export function drillApproach(
  { girder, bays, landsAt }: Launch,
  rules: LaunchRules,
  lot: number,
): Stage[] {
  const stages: Stage[] = [];
  let tip = 0;
  let built = 0;
  while (built < bays) {
    const before = built;
    built = Math.min(bays, built + lot);
    const metres = (built - before) * girder.bayLength;
    const balance = balanceBehind(girder, { tip: tip + metres, bays: built, decked: [] }) ?? 0;
    if (built < bays && balance >= rules.margin && tip + metres < landsAt - hair) {
      tip += metres;
      stages.push(
        makeStage(stages, { bays: built, decked: [], metres, tip, balance, lands: false }),
      );
    }
  }
  return stages;
}
