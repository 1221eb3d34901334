import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { waterTime } from '#domain/bridge/waterTime.ts';
import { metres, minutes } from '../words/units.ts';
import { words } from '../words/words.ts';
import { waterWords } from './SpanSite.tsx';
import type { SiteProfile } from './siteProfile.ts';
import type { StripView } from './stripView.ts';

type Props = {
  readonly view: StripView;
  readonly ground: Ground;
  readonly bridge: Bridge | null;
  readonly site: SiteProfile;
  /** First pixel below the girder where a line of words may stand. */
  readonly over: number;
};

/** What was measured, on the drawing of the site: gap, heights, setbacks, room behind, water and its limit. */
export function SiteMarks({ view, ground, bridge, site, over }: Props) {
  const { x, y, bottom, wide, width } = view;
  const { near, far, surface, bed, profile } = site;
  const said = words.ground.mark;
  const room = ground.roomBehind;
  const back = room ?? bridge?.roomNeeded ?? 0;
  const left = Math.max(2, x(-back));
  const limit = limitLine(ground, surface);
  const middle = x((near.x + far.x) / 2);
  return (
    <g>
      <Measured
        from={x(near.x)}
        to={x(far.x)}
        at={bottom - 14}
        text={words.span.gap(metres(ground.gap))}
      />
      {back > 0 ? (
        <g>
          <path className={room === null ? 'd-dotted' : 'd-thin'} d={`M${left} ${over}H${x(0)}`} />
          <path className="d-thin" d={`M${left} ${over - 5}v10M${x(0)} ${over - 5}V${y(0)}`} />
          <text className="d-text small" x={(left + x(0)) / 2} y={over - 6} textAnchor="middle">
            {room === null ? said.roomUnknown : said.room(metres(room))}
          </text>
        </g>
      ) : null}
      {(['near', 'far'] as const).map((bank) => {
        const { setback, height } = ground[bank];
        const [edge, out] = bank === 'near' ? ([near, -1] as const) : ([far, 1] as const);
        const bearing = edge.x + out * setback;
        return (
          <g key={bank}>
            <path className="d-full" d={`M${x(bearing)} ${y(edge.y)}l-6 9h12Z`} />
            {setback > 0 ? (
              <text
                className="d-text small"
                x={x(edge.x) + out * 8}
                y={y(edge.y) + 24}
                textAnchor={out < 0 ? 'end' : 'start'}
              >
                {said.setback(metres(setback))}
              </text>
            ) : null}
            {wide && height !== null ? (
              <text
                className="d-text small two"
                x={x(edge.x) + out * 8}
                y={Math.max(y(edge.y) + 42, (y(edge.y) + y(surface)) / 2 + 12)}
                textAnchor={out < 0 ? 'end' : 'start'}
              >
                {said.height(metres(height))}
              </text>
            ) : null}
          </g>
        );
      })}
      {wide && site.water !== null ? (
        <text
          className="d-text small"
          x={middle}
          y={Math.min(y(surface) + 18, (y(surface) + y(bed)) / 2 + 5)}
          textAnchor="middle"
        >
          {waterWords(ground.water.rise)}
          {site.depthKnown ? '' : `, ${words.span.depthGuessed}`}
        </text>
      ) : null}
      {limit ? (
        <g>
          <path
            className="d-accent"
            strokeDasharray="8 4"
            d={`M${x(profile[1]?.x ?? 0)} ${y(limit.at)}H${x(profile[4]?.x ?? 0)}`}
          />
          <text className="d-text small accent" x={middle} y={y(limit.at) - 6} textAnchor="middle">
            {wide ? limit.words : limit.short}
          </text>
        </g>
      ) : null}
      {wide ? (
        <>
          <text className="d-text small two" x={10} y={bottom - 10}>
            {words.span.near}
          </text>
          <text className="d-text small two" x={width - 10} y={bottom - 10} textAnchor="end">
            {words.span.far}
          </text>
        </>
      ) : null}
    </g>
  );
}

/** Where the water has to stop, metres above the near bank, and how soon it does. */
function limitLine({ water, ...rest }: Ground, surface: number) {
  const { level = null, limit = null } = water;
  if (level === null || limit === null) return null;
  const left = waterTime({ water, ...rest });
  const said = words.ground.mark;
  return {
    at: surface + limit - level,
    words: left?.minutes ? said.limit(minutes(left.minutes)) : said.limitPlain,
    short: left?.minutes ? said.limitShort(minutes(left.minutes)) : said.limitPlain,
  };
}

function Measured({
  from,
  to,
  at,
  text,
}: {
  readonly from: number;
  readonly to: number;
  readonly at: number;
  readonly text: string;
}) {
  return (
    <g>
      <path className="d-thin" d={`M${from} ${at - 6}v12M${to} ${at - 6}v12M${from} ${at}H${to}`} />
      <text className="d-text small bold" x={(from + to) / 2} y={at - 6} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}
