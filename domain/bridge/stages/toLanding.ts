import type { LaunchRules } from '../../kit/kit.ts';
import type { Stage } from '../bridge.ts';
import { whatHolds } from './holding.ts';
import type { Launch } from './launch.ts';
import { hair, makeStage } from './makeStage.ts';

/**
 * With all bays built the tip is brought to the far rollers, in equal moves no longer than the kit allows, each with
 * what holds it (`whatHolds`). Null where nothing does.
 */
export function toLanding(
  { girder, bays, landsAt }: Launch,
  rules: LaunchRules,
  approach: readonly Stage[],
): Stage[] | null {
  const stages: Stage[] = [];
  const last = approach.at(-1);
  let tip = last?.tip ?? 0;
  let decked: readonly number[] = last?.decked ?? [];
  const moves = Math.max(1, Math.ceil((landsAt - tip) / rules.longestMove - hair));
  const metres = (landsAt - tip) / moves;
  for (let move = 1; move <= moves; move += 1) {
    tip += metres;
    const held = whatHolds(girder, bays, decked, rules, tip);
    if (held === null) {
      return null;
    }
    decked = held.decked;
    const before = [...approach, ...stages];
    stages.push(makeStage(before, { ...held, bays, metres, tip, lands: move === moves }));
  }
  return stages;
}
