import type { LaunchRules } from '../../kit/kit.ts';
import { type Launch, launchStages } from './launch.ts';

/** Room is measured to the decimetre. */
const step = 0.1;

/**
 * Least room behind the front rollers, to the decimetre, in which the launch can be staged at all. More room never
 * hinders, so the least is closed in on by halving. `launch` holds its balance in room enough.
 */
export function leastRoom(launch: Launch, rules: LaunchRules): number {
  const { girder, bays } = launch;
  let high = Math.ceil((girder.noseLength + bays * girder.bayLength) / step);
  let low = Math.floor(girder.noseLength / step);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (launchStages({ ...launch, room: middle * step }, rules).ok) {
      high = middle;
    } else {
      low = middle;
    }
  }
  return high * step;
}
