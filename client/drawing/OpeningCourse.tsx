import { useId } from 'react';
import { atMinute, clock } from '../words/units.ts';
import { words } from '../words/words.ts';
import { clockTicks } from './clockTicks.ts';
import { type Look, layCourse } from './openingCourse.ts';
import { Patterns } from './Patterns.tsx';
import { useWidth } from './useWidth.ts';
import './drawing.css';

/** Something that moved the opening: what its mark says aloud. */
export type CourseTurn = { readonly at: number; readonly says: string };

type Props = {
  /** In order of time, at least one. Minutes after the start. */
  readonly looks: readonly Look[];
  readonly turns: readonly CourseTurn[];
  /** Minutes after the start; null when nobody asked. */
  readonly asked: number | null;
  readonly now: number;
  readonly start: string;
  readonly zone: string;
  /** Which turn is shown in words, by its place in `turns`. */
  readonly chosen: number | null;
  readonly onChoose: (turn: number) => void;
};

const gutter = { left: 52, right: 52, top: 34, bottom: 30 };
/** A mark is touched with a thumb. Pixels. */
const mark = 48;

/** The band and the line of the headline, openings across as in the opening strip, the clock down to now. */
export function OpeningCourse(props: Props) {
  const { looks, turns, asked, now, start, zone, chosen, onChoose } = props;
  const id = useId();
  const [box, width] = useWidth<HTMLDivElement>(600);
  const said = words.forecast.course;
  const plot = Math.max(120, width - gutter.left - gutter.right);
  const laid = layCourse(looks, turns, asked, now, { width: plot, mark });
  const at = (minute: number): string => clock(atMinute(start, minute), zone);
  const startAt = Date.parse(start);
  const across = clockTicks(startAt, ...laid.openings, Math.max(2, Math.floor(plot / 64)));
  const down = clockTicks(startAt, ...laid.clock, Math.max(2, Math.floor(laid.height / 44)));
  const flagLeft = laid.post !== null && laid.post > plot - 66;
  const height = gutter.top + laid.height + gutter.bottom;
  return (
    <div ref={box} className="opening-course">
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${height}`}
        height={height}
        role="img"
        aria-label={said.picture(at(laid.clock[0]), at(laid.clock[1]), looks.length)}
      >
        <Patterns id={id} />
        <g transform={`translate(${gutter.left} ${gutter.top})`}>
          {across.map((tick) => (
            <g key={tick}>
              <line
                className="d-hair"
                x1={laid.x(tick)}
                x2={laid.x(tick)}
                y1={0}
                y2={laid.height}
              />
              <text
                className="d-text two"
                x={laid.x(tick)}
                y={laid.height + 22}
                textAnchor="middle"
              >
                {at(tick)}
              </text>
            </g>
          ))}
          {down
            .filter((tick) => laid.height - laid.y(tick) > 22)
            .map((tick) => (
              <g key={tick}>
                <line className="d-hair" x1={0} x2={plot} y1={laid.y(tick)} y2={laid.y(tick)} />
                <text className="d-text two" x={-8} y={laid.y(tick) + 5} textAnchor="end">
                  {at(tick)}
                </text>
              </g>
            ))}
          <path className="course-band" fill={`url(#${id}-hatch)`} d={laid.band} />
          <path className="d-line" d={laid.even} />
          <path className="d-heavy" d={laid.sure} />
          <line className="d-line" x1={0} x2={plot} y1={laid.height} y2={laid.height} />
          <text className="d-text bold" x={-8} y={laid.height + 5} textAnchor="end">
            {at(laid.clock[1])}
          </text>
          {laid.post === null ? null : (
            <g>
              <line className="d-post" x1={laid.post} x2={laid.post} y1={-30} y2={laid.height} />
              <rect
                className="d-flag"
                x={flagLeft ? laid.post - 62 : laid.post}
                y={-30}
                width={62}
                height={25}
              />
              <text
                className="d-text accent"
                x={flagLeft ? laid.post - 31 : laid.post + 31}
                y={-12}
                textAnchor="middle"
              >
                {words.forecast.asked}
              </text>
            </g>
          )}
          {laid.askedOff && asked !== null ? (
            <text
              className="d-text accent"
              x={laid.askedOff === 'before' ? 0 : plot}
              y={-12}
              textAnchor={laid.askedOff === 'before' ? 'start' : 'end'}
            >
              {words.openingStrip.askedOff(laid.askedOff, at(asked))}
            </text>
          ) : null}
          {laid.turns.map(({ line, mark: place }, index) => (
            <path
              // The turns of a build have an order and nothing else to be told apart by.
              // biome-ignore lint/suspicious/noArrayIndexKey: see above
              key={index}
              className={index === chosen ? 'd-line' : 'd-thin'}
              d={`M0 ${line}H${plot}L${plot + 12} ${place}`}
            />
          ))}
        </g>
      </svg>
      {turns.map(({ says }, index) => (
        <button
          // biome-ignore lint/suspicious/noArrayIndexKey: as above
          key={index}
          type="button"
          className="course-mark"
          style={{ top: gutter.top + (laid.turns[index]?.mark ?? 0) - mark / 2 }}
          aria-pressed={index === chosen}
          aria-label={said.mark(index + 1, at(turns[index]!.at), says)}
          onClick={() => onChoose(index)}
        >
          {index + 1}
        </button>
      ))}
    </div>
  );
}
