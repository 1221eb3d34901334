import { atMinute, clock, people as peopleWords } from '../words/units.ts';
import { words } from '../words/words.ts';
import { clockTicks } from './clockTicks.ts';
import type { Stretch } from './strengthProfile.ts';
import { useWidth } from './useWidth.ts';
import './drawing.css';

type Props = {
  readonly crew: string;
  readonly stretches: readonly Stretch[];
  /** People at the full height: the same for crews that are compared. */
  readonly most: number;
  /** Minutes after the start; null where it is out of the picture. */
  readonly now: number | null;
  readonly start: string;
  readonly zone: string;
};

const tall = 52;
const head = 20;
const axis = 24;

/** How many of a crew there are for work over time: as high as there are people, down to the line where nobody is. */
export function StrengthLine({ crew, stretches, most, now, start, zone }: Props) {
  const [box, width] = useWidth<HTMLDivElement>(480);
  const said = words.hours.line;
  const from = stretches[0]?.from ?? 0;
  const to = stretches.at(-1)?.to ?? 1;
  const x = (minute: number): number => 1 + ((width - 2) * (minute - from)) / (to - from);
  const bottom = head + tall;
  const y = (people: number): number => bottom - (tall * people) / Math.max(1, most);
  const time = (minute: number): string => clock(atMinute(start, minute), zone, start);
  const outline = stretches
    .map(({ from: begins, to: ends, people }, at) => {
      return `${at === 0 ? 'M' : 'L'}${x(begins)} ${y(people)}H${x(ends)}`;
    })
    .join('');
  const parts = stretches.map((one) =>
    one.rest
      ? said.restOf(time(one.from), time(one.to))
      : said.part(peopleWords(one.people), time(one.from), time(one.to)),
  );
  const ticks = clockTicks(Date.parse(start), from, to, Math.max(1, Math.floor(width / 80)));
  return (
    <div ref={box}>
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${bottom + axis}`}
        height={bottom + axis}
        role="img"
        aria-label={said.name(crew, parts.join(', '))}
      >
        {ticks.map((tick) => (
          <g key={tick}>
            <line className="d-hair" x1={x(tick)} x2={x(tick)} y1={bottom} y2={bottom + 5} />
            <text
              className="d-text two"
              x={Math.min(width - 20, Math.max(20, x(tick)))}
              y={bottom + 20}
              textAnchor="middle"
            >
              {clock(atMinute(start, tick), zone)}
            </text>
          </g>
        ))}
        <path
          className="d-tint"
          d={`M${x(from)} ${bottom}${outline.replace('M', 'L')}V${bottom}Z`}
        />
        <path className="d-line" d={outline} />
        <line className="d-thin" x1={0} x2={width} y1={bottom} y2={bottom} />
        {stretches.map(({ from: begins, to: ends, people, rest }) => {
          const label = rest ? said.rest : String(people);
          const wide = x(ends) - x(begins);
          return wide >= 8 * label.length + 4 ? (
            <text key={begins} className="d-text d-halo" x={x(begins) + 3} y={y(people) - 6}>
              {label}
            </text>
          ) : null;
        })}
        {now !== null && now > from && now < to ? (
          <path className="d-post" d={`M${x(now)} ${head}V${bottom + 6}`} />
        ) : null}
      </svg>
    </div>
  );
}
