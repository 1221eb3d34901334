import type { SiteProfile } from './siteProfile.ts';
import type { StripView } from './stripView.ts';

/** Both banks and the water between them, as far down as the strip goes. */
export function SiteBanks({
  view,
  site: { near, profile, water, surface },
}: {
  readonly view: StripView;
  readonly site: SiteProfile;
}) {
  const { x, y, id, width, bottom, top } = view;
  const line = profile.map((point) => `${x(point.x)} ${y(point.y)}`).join('L');
  const deep = Math.max(bottom, y(profile[2]?.y ?? 0));
  return (
    <g clipPath={`url(#${id}-${top}-clip)`}>
      <clipPath id={`${id}-${top}-clip`}>
        <rect x={0} y={top} width={width} height={bottom - top} />
      </clipPath>
      <path
        fill={`url(#${id}-ground)`}
        d={`M0 ${y(near.y)}H${x(near.x)}L${line}H${width}V${deep}H0Z`}
      />
      {water === null ? null : (
        <path
          fill={`url(#${id}-water)`}
          d={`M${profile
            .slice(1, 5)
            .map((point) => `${x(point.x)} ${y(point.y)}`)
            .join('L')}Z`}
        />
      )}
      {water !== null && y(surface) < bottom ? (
        <line
          className="d-wave"
          x1={x(profile[1]?.x ?? 0)}
          x2={x(profile[4]?.x ?? 0)}
          y1={y(surface)}
          y2={y(surface)}
        />
      ) : null}
      <path className="d-line" d={`M0 ${y(near.y)}H${x(near.x)}L${line}H${width}`} />
    </g>
  );
}
