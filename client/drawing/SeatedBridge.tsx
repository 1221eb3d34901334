import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { GirderPanel } from './GirderPanel.tsx';
import { girderDepth } from './girderDrawn.ts';
import type { SiteProfile } from './siteProfile.ts';
import type { StripView } from './stripView.ts';

type Props = {
  readonly view: StripView;
  readonly bridge: Bridge;
  readonly ground: Ground | null;
  readonly site: SiteProfile;
};

/** A bridge that is to come, dashed where it will lie: from bearing to bearing, bay by bay. */
export function SeatedBridge({ view, bridge, ground, site }: Props) {
  const depth = girderDepth(bridge);
  const tail = site.near.x - (ground?.near.setback ?? 0) - bridge.bearing.near;
  const slope = site.far.y / bridge.length;
  return (
    <g>
      {Array.from({ length: bridge.bays }, (_, at) => {
        const [from, to] = [at * bridge.bayLength, (at + 1) * bridge.bayLength];
        return (
          <GirderPanel
            key={from}
            view={view}
            from={tail + from}
            to={tail + to}
            status="to-come"
            left={[slope * from, slope * from + depth]}
            right={[slope * to, slope * to + depth]}
          />
        );
      })}
    </g>
  );
}
