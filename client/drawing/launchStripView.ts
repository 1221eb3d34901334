import { girderDepth, rollerHeight } from './girderDrawn.ts';
import type { Launching } from './launchMoment.ts';
import { launchReach } from './launchMoment.ts';
import { siteProfile } from './siteProfile.ts';
import { type StripView, stripView } from './stripView.ts';

/** A strip over all the ground that the launch takes: every drawing of it at one scale. */
export function launchStripView(
  launching: Launching,
  room: Pick<StripView, 'id' | 'width' | 'wide' | 'top'> & {
    readonly above: number;
    readonly below: number;
  },
): StripView {
  const { far } = siteProfile(launching.ground, launching.bridge);
  return stripView({
    ...room,
    reach: launchReach(launching),
    highest: Math.max(0, far.y) + rollerHeight + girderDepth(launching.bridge),
  });
}
