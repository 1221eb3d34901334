import { scaleLinear } from 'd3-scale';
import { atMinute, clock, minuteOf, zoneName } from '../words/units.ts';
import { words } from '../words/words.ts';
import { clockTicks } from './clockTicks.ts';
import { pileOpenings } from './openings.ts';
import { useWidth } from './useWidth.ts';
import './drawing.css';

type Props = {
  /** Twenty equally likely openings, minutes after the start. */
  readonly openings: readonly number[];
  /** ISO 8601 UTC; null when nobody asked for a time. */
  readonly askedFor: string | null;
  readonly start: string;
  readonly zone: string;
};

const axis = 34;
const top = 34;

/** Twenty equally likely openings as countable dots against the post "asked". */
export function OpeningStrip({ openings, askedFor, start, zone }: Props) {
  const [box, width] = useWidth<HTMLElement>(460);
  const said = words.openingStrip;
  const asked = askedFor === null ? null : minuteOf(start, askedFor);
  const wish = width < 400 ? 19 : 26;
  const columns = Math.max(8, Math.floor(width / wish));
  const piles = pileOpenings(openings, asked, columns);
  const each = width / columns;
  // A tall pile gets smaller dots rather than a taller drawing.
  const rowHeight = Math.min(each, 150 / piles.highest);
  const height = top + Math.max(3, piles.highest) * rowHeight + axis;
  const ground = height - axis;
  const x = scaleLinear()
    .domain([piles.from, piles.from + columns * piles.columnMinutes])
    .range([0, width]);
  const [from, to] = x.domain() as [number, number];
  const at = (minute: number): string => clock(atMinute(start, minute), zone);
  const late = openings.filter((opening) => asked !== null && opening > asked).length;
  const middle = [...openings].sort((a, b) => a - b)[Math.floor(openings.length / 2)] ?? 0;
  const postX = piles.post === null ? null : piles.post * each;
  const flagLeft = postX !== null && postX > width - 70;
  const summary = [
    asked === null
      ? said.free(openings.length)
      : said.against(openings.length - late, openings.length, at(asked)),
    said.range(at(Math.min(...openings)), at(middle), at(Math.max(...openings))),
  ].join(' ');

  return (
    <figure ref={box} className="strip">
      <figcaption className="second small">
        {said.caption(openings.length)} {late > 0 ? said.crossed : ''}
      </figcaption>
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${height}`}
        height={height}
        role="img"
        aria-label={summary}
      >
        <line className="d-line" x1={0} x2={width} y1={ground} y2={ground} />
        {clockTicks(Date.parse(start), from, to, width < 400 ? 4 : 6).map((tick) => (
          <g key={tick}>
            <line className="d-thin" x1={x(tick)} x2={x(tick)} y1={ground} y2={ground + 7} />
            <text className="d-text two" x={x(tick)} y={ground + 26} textAnchor="middle">
              {at(tick)}
            </text>
          </g>
        ))}
        {piles.dots.map(({ column, row, late: isLate }) => {
          const cx = (column + 0.5) * each;
          const cy = ground - (row + 0.5) * rowHeight - 1;
          const r = rowHeight / 2 - 1.5;
          const cross = r * 0.5;
          return (
            <g key={`${column}.${row}`}>
              <circle className={isLate ? 'd-open' : 'd-opening'} cx={cx} cy={cy} r={r} />
              {isLate ? (
                <path
                  className="d-line"
                  d={`M${cx - cross} ${cy - cross}L${cx + cross} ${cy + cross}M${cx - cross} ${cy + cross}L${cx + cross} ${cy - cross}`}
                />
              ) : null}
            </g>
          );
        })}
        {postX === null ? null : (
          <g>
            <line className="d-post" x1={postX} x2={postX} y1={4} y2={ground} />
            <rect
              className="d-flag"
              x={flagLeft ? postX - 62 : postX}
              y={4}
              width={62}
              height={25}
            />
            <text
              className="d-text accent"
              x={flagLeft ? postX - 31 : postX + 31}
              y={22}
              textAnchor="middle"
            >
              {said.asked}
            </text>
          </g>
        )}
        {piles.askedOff && asked !== null ? (
          <text
            className="d-text accent"
            x={piles.askedOff === 'before' ? 0 : width}
            y={22}
            textAnchor={piles.askedOff === 'before' ? 'start' : 'end'}
          >
            {said.askedOff(piles.askedOff, at(asked))}
          </text>
        ) : null}
      </svg>
      <details className="small no-print">
        <summary>{said.inWords}</summary>
        <p>{summary}</p>
        <p>
          {[...openings]
            .sort((a, b) => a - b)
            .map(at)
            .join(', ')}{' '}
          {zoneName(start, zone)}
        </p>
      </details>
    </figure>
  );
}
