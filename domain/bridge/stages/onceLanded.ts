import type { LaunchRules } from '../../kit/kit.ts';
import type { Stage } from '../bridge.ts';
import { runsOf } from '../statics/body.ts';
import { centreOfGravity } from '../statics/centreOfGravity.ts';
import type { Launch } from './launch.ts';
import { hair, makeStage } from './makeStage.ts';

/**
 * Once landed, the nose comes off in the kit's lots: each move brings one lot past the far rollers, the last also
 * brings the bridge to its bearing. A move ends early where the nose that is still on would bring the centre of
 * gravity nearer to the far rollers than the kit's margin, or a quarter of the way between the rollers where that is
 * less. Null where the bridge would tip over the far rollers all the same.
 */
export function onceLanded(
  launch: Launch,
  rules: LaunchRules,
  landed: readonly Stage[],
): Stage[] | null {
  const { girder, bays, final } = launch;
  const decked = landed.at(-1)?.decked ?? [];
  const sectionLength = girder.nose === 0 ? 0 : girder.noseLength / girder.nose;
  const stages: Stage[] = [];
  let tip = landed.at(-1)?.tip ?? 0;
  let off = 0;
  while (final - tip > hair) {
    const left = girder.nose - off;
    const lot = Math.min(rules.noseOff, left);
    const rest = final - tip;
    // The last lot goes with the rest of the way, unless that is more than one move may be.
    const wanted =
      left <= rules.noseOff && rest <= rules.longestMove + hair
        ? rest
        : Math.min(lot > 0 ? lot * sectionLength : rest, rules.longestMove, rest);
    const metres = Math.min(wanted, tipLimit(launch, rules, decked, off) - tip);
    if (metres < least) {
      return null;
    }
    tip += metres;
    const past = tip - launch.landsAt;
    const clear = sectionLength === 0 ? 0 : Math.floor(past / sectionLength + hair);
    const until = Math.min(girder.nose, clear);
    const noseOff = Array.from({ length: Math.max(0, until - off) }, (_, at) => off + at + 1);
    off = Math.max(off, until);
    const before = [...landed, ...stages];
    stages.push({
      ...makeStage(before, { bays, decked, metres, tip, balance: null, lands: false }),
      noseOff,
    });
  }
  return stages;
}

/** A move shorter than this brings nothing. Metres. */
const least = 0.01;

/** Furthest that the tip of the whole nose may go, with its first sections off. */
function tipLimit(
  { girder, bays, landsAt }: Launch,
  rules: LaunchRules,
  decked: readonly number[],
  sectionsOff: number,
): number {
  const centre = centreOfGravity(runsOf({ girder, bays, decked, sectionsOff, counterweight: 0 }));
  return landsAt - Math.min(rules.margin, landsAt / 4) + (centre?.behindTip ?? 0);
}
