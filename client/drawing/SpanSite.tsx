import { centimetres, metres } from '../words/units.ts';
import { words } from '../words/words.ts';
import type { SpanView } from './spanView.ts';

type Props = {
  readonly view: SpanView;
  readonly gap?: number;
  /** Metres per hour; null when nobody measured it. */
  readonly rise?: number | null;
  /** Only the ground: no water, words or measures. */
  readonly plain?: boolean;
};

/** Both banks, the water and how wide the gap is. */
export function SpanSite({ view, gap = 0, rise = null, plain = false }: Props) {
  const { geometry, x, y, id, width, height, wide } = view;
  const { near, far, profile, water } = geometry;
  const said = words.span;
  const line = profile.map((point) => `${x(point.x)} ${y(point.y)}`).join('L');
  const bottom = y(geometry.lowest);
  const [, nearFoot, , , farFoot] = profile;
  const middle = (x(near.x) + x(far.x)) / 2;
  return (
    <g>
      <path
        fill={`url(#${id}-ground)`}
        d={`M0 ${y(near.y)}H${x(near.x)}L${line}H${width}V${height}H0Z`}
      />
      {water !== null && nearFoot && farFoot && !plain ? (
        <>
          <path
            fill={`url(#${id}-water)`}
            d={`M${profile
              .slice(1, 5)
              .map((point) => `${x(point.x)} ${y(point.y)}`)
              .join('L')}Z`}
          />
          <line
            className="d-wave"
            x1={x(nearFoot.x)}
            x2={x(farFoot.x)}
            y1={y(water)}
            y2={y(water)}
          />
          {wide ? (
            <text
              className="d-text"
              x={middle}
              y={Math.min(y(water) + 20, (y(water) + bottom) / 2 + 8)}
              textAnchor="middle"
            >
              {waterWords(rise)}
              {geometry.depthKnown ? '' : `, ${said.depthGuessed}`}
            </text>
          ) : null}
        </>
      ) : null}
      <path className="d-line" d={`M0 ${y(near.y)}H${x(near.x)}L${line}H${width}`} />
      {plain ? null : (
        <g>
          <path
            className="d-thin"
            d={`M${x(near.x)} ${bottom + 24}v12M${x(far.x)} ${bottom + 24}v12M${x(near.x)} ${bottom + 30}H${x(far.x)}`}
          />
          <rect className="d-ground" x={middle - 56} y={bottom + 20} width={112} height={20} />
          <text className="d-text" x={middle} y={bottom + 35} textAnchor="middle">
            {said.gap(metres(gap))}
          </text>
        </g>
      )}
      {wide ? (
        <>
          <text className="d-text two" x={16} y={y(near.y) + 26}>
            {said.near}
          </text>
          <text className="d-text two" x={width - 16} y={y(far.y) + 26} textAnchor="end">
            {said.far}
          </text>
        </>
      ) : null}
    </g>
  );
}

/** What is known of the water, in a few words. */
export function waterWords(rise: number | null): string {
  const said = words.span;
  if (rise === null) return said.waterUnknown;
  if (Math.abs(rise) < 0.005) return said.waterSteady;
  return rise > 0
    ? said.waterRising(centimetres(rise))
    : said.waterFalling(centimetres(Math.abs(rise)));
}
