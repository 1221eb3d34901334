import { GirderPanel } from './GirderPanel.tsx';
import { girderDepth, rollerHeight } from './girderDrawn.ts';
import type { Launching, LaunchMoment } from './launchMoment.ts';
import { SiteBanks } from './SiteBanks.tsx';
import { siteProfile } from './siteProfile.ts';
import type { StripView } from './stripView.ts';

type Props = {
  readonly view: StripView;
  readonly launching: Launching;
  readonly moment: LaunchMoment;
  /** What was built for this stage is hatched; without it everything stands. */
  readonly adding?: boolean;
};

/** A launch at one moment, to scale: both banks as far down as the strip goes, rollers, nose, bays and decks. */
export function LaunchStrip({ view, launching, moment, adding = false }: Props) {
  const { x, y } = view;
  const { bridge, kit } = launching;
  const site = siteProfile(launching.ground, bridge);
  const depth = girderDepth(bridge);
  const bottom = bottomLine(launching, moment, site.far.y);
  const numbers = view.scale * bridge.bayLength >= 20;
  return (
    <g>
      <SiteBanks view={view} site={site} />
      {[0, ...(kit.launch?.rollers.behind ?? []).map((back) => -back), bridge.landsAt].map((at) => (
        <Roller key={at} view={view} at={at} ground={at === bridge.landsAt ? site.far.y : 0} />
      ))}
      {moment.nose.map(({ section, from, to }) => (
        <GirderPanel
          key={`nose-${section}`}
          view={view}
          from={from}
          to={to}
          status={adding && moment.held.moved === 0 ? 'at-work' : 'done'}
          slender
          left={[bottom(from), bottom(from) + depth * 0.7]}
          right={[bottom(to), bottom(to) + depth * (section === 1 ? 0.55 : 0.7)]}
        />
      ))}
      {moment.bays.map(({ bay, from, to, decked, fresh, freshDeck }) => (
        <g key={`bay-${bay}`}>
          <GirderPanel
            view={view}
            from={from}
            to={to}
            status={adding && fresh ? 'at-work' : 'done'}
            left={[bottom(from), bottom(from) + depth]}
            right={[bottom(to), bottom(to) + depth]}
          />
          {decked ? (
            <line
              className={`d-plank ${adding && freshDeck ? 'd-plank-at-work' : ''}`}
              x1={x(from)}
              x2={x(to)}
              y1={y(bottom(from) + depth) - 4}
              y2={y(bottom(to) + depth) - 4}
            />
          ) : null}
          {numbers ? (
            <text
              className="d-text small two"
              x={x((from + to) / 2)}
              y={y(bottom((from + to) / 2) + depth) - 9}
              textAnchor="middle"
            >
              {bay}
            </text>
          ) : null}
        </g>
      ))}
      {moment.counterweight > 0 ? (
        <rect
          className="d-full"
          x={x(moment.held.tail)}
          y={y(rollerHeight + depth) - 10}
          width={Math.max(6, view.scale)}
          height={10}
        />
      ) : null}
    </g>
  );
}

function Roller({
  view: { x, y, scale },
  at,
  ground,
}: {
  readonly view: StripView;
  readonly at: number;
  readonly ground: number;
}) {
  const half = Math.max(4, 0.5 * scale);
  return (
    <path
      className="d-full"
      d={`M${x(at) - half} ${y(ground)}L${x(at) - half * 0.5} ${y(ground + rollerHeight * 0.9)}H${x(at) + half * 0.5}L${x(at) + half} ${y(ground)}Z`}
    />
  );
}

/** Height of the lower edge: level on the rollers, hanging by the sag that is reckoned, straight once it has landed. */
function bottomLine(
  { bridge }: Launching,
  { held, front }: LaunchMoment,
  farY: number,
): (x: number) => number {
  if (held.landed) {
    return (x) => rollerHeight + (farY * Math.max(0, x)) / Math.max(1, bridge.landsAt);
  }
  const sag = held.sag ?? 0;
  // The tip stands where it is reckoned; between it and the rollers the line only joins them.
  return (x) => rollerHeight - (x > 0 && front > 0 ? sag * (x / front) ** 2 : 0);
}
