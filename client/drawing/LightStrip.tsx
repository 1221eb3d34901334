import { useId } from 'react';
import { toMinute } from '#domain/brief/light.ts';
import { clock } from '../words/units.ts';
import { words } from '../words/words.ts';
import type { LightCourse } from './lightPhases.ts';
import { Patterns } from './Patterns.tsx';
import { spreadApart } from './spreadApart.ts';
import './drawing.css';

type Props = {
  readonly course: LightCourse;
  readonly zone: string;
  /** Milliseconds since 1970. */
  readonly now: number;
  /** When it opens by the headline; null when nothing is forecast. */
  readonly opens: number | null;
};

const height = 300;
const strip = { x: 64, width: 56 };
const label = 21;

/** A day and a night from top to bottom: paper by day, tint in twilight, hatch in the dark, each turn named. */
export function LightStrip({ course: { spells, turns }, zone, now, opens }: Props) {
  const id = useId();
  const said = words.forecast.light;
  const from = spells[0]!.from;
  const to = spells.at(-1)!.to;
  const y = (at: number): number => 8 + ((at - from) / (to - from)) * height;
  const places = spreadApart(
    turns.map(({ at }) => y(at)),
    label,
    12,
    height + 4,
  );
  const inside = (at: number): boolean => at >= from && at <= to;
  const marks = [
    ...(inside(now) ? [{ at: now, text: clock(now, zone), heavy: true }] : []),
    ...(opens !== null && inside(opens)
      ? [{ at: opens, text: clock(opens, zone), heavy: false }]
      : []),
  ];
  const markPlaces = spreadApart(
    marks.map(({ at }) => y(at)),
    label,
    12,
    height + 4,
  );
  return (
    <svg
      className="light-strip"
      viewBox={`0 0 300 ${height + 16}`}
      width={300}
      height={height + 16}
      role="img"
      aria-label={said.picture(
        spells
          .map((spell) => said.until(said.phases[spell.phase], clock(toMinute(spell.to), zone)))
          .join(', '),
      )}
    >
      <Patterns id={id} />
      {spells.map((spell) => (
        <rect
          key={spell.from}
          className={`light-${spell.phase}`}
          fill={spell.phase === 'night' ? `url(#${id}-hatch)` : undefined}
          x={strip.x}
          y={y(spell.from)}
          width={strip.width}
          height={y(spell.to) - y(spell.from)}
        />
      ))}
      <rect className="d-open" x={strip.x} y={8} width={strip.width} height={height} />
      {turns.map(({ name, at }, index) => (
        <g key={`${name} ${at}`}>
          <path
            className="d-thin"
            d={`M${strip.x} ${y(at)}H${strip.x + strip.width}L${strip.x + strip.width + 16} ${places[index]}`}
          />
          <text
            className={name === 'sunrise' || name === 'sunset' ? 'd-text bold' : 'd-text'}
            x={strip.x + strip.width + 20}
            y={(places[index] ?? 0) + 5}
          >
            {said.turn(said.turns[name], clock(toMinute(at), zone))}
          </text>
        </g>
      ))}
      {marks.map(({ at, text, heavy }, index) => (
        <g key={text}>
          <path
            className={heavy ? 'd-accent' : 'd-line'}
            d={
              heavy
                ? `M${strip.x - 8} ${y(at) - 2}H${strip.x + strip.width}M${strip.x - 8} ${y(at) + 2}H${strip.x + strip.width}`
                : `M${strip.x - 8} ${y(at)}H${strip.x + strip.width}`
            }
          />
          <text
            className={heavy ? 'd-text accent' : 'd-text bold'}
            x={strip.x - 12}
            y={(markPlaces[index] ?? 0) + 5}
            textAnchor="end"
          >
            {text}
          </text>
        </g>
      ))}
    </svg>
  );
}
