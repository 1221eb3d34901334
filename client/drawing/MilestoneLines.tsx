import { atMinute, clock } from '../words/units.ts';
import { words } from '../words/words.ts';
import { clockTicks } from './clockTicks.ts';
import { layMilestones, type MilestoneAhead } from './milestoneRows.ts';
import { useWidth } from './useWidth.ts';
import './drawing.css';

type Props = {
  /** Those still to come; `hold` draws a box, else a bar. */
  readonly milestones: readonly (MilestoneAhead & { readonly hold: boolean })[];
  /** Minutes after the start. */
  readonly now: number;
  readonly start: string;
  readonly zone: string;
};

const row = 46;
const axis = 30;
const letter = 7.4;

/** Each milestone to come with its spread, one below the other, under one line of time. */
export function MilestoneLines({ milestones, now, start, zone }: Props) {
  const [box, width] = useWidth<HTMLDivElement>(600);
  const laid = layMilestones(milestones, now, width, letter);
  const holds = new Set(milestones.flatMap(({ hold, task }) => (hold ? [task] : [])));
  const bottom = laid.rows.length * row + 6;
  const ticks = clockTicks(Date.parse(start), laid.from, laid.to, Math.floor(width / 70));
  return (
    <div ref={box}>
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${bottom + axis}`}
        height={bottom + axis}
        role="img"
        aria-label={words.forecast.milestones.picture(laid.rows.length)}
      >
        {ticks.map((tick) => (
          <g key={tick}>
            <line className="d-hair" x1={laid.x(tick)} x2={laid.x(tick)} y1={0} y2={bottom} />
            <text
              className="d-text two"
              x={Math.min(width - 20, Math.max(20, laid.x(tick)))}
              y={bottom + 20}
              textAnchor="middle"
            >
              {clock(atMinute(start, tick), zone)}
            </text>
          </g>
        ))}
        <line className="d-line" x1={0} x2={width} y1={bottom} y2={bottom} />
        {laid.rows.map(({ task, label, labelX, anchor, p10, p50, p80, p90 }, index) => {
          const y = index * row + 34;
          const hold = holds.has(task);
          return (
            <g key={task}>
              <text className="d-text d-halo" x={labelX} y={y - 14} textAnchor={anchor}>
                {label}
              </text>
              <path
                className="d-line"
                d={`M${p10} ${y - 5}V${y + 5}M${p10} ${y}H${p90}M${p90} ${y - 7}V${y + 7}`}
              />
              <rect
                className="d-full"
                x={Math.min(p50, p80)}
                y={y - 2.5}
                width={Math.max(1, p80 - p50)}
                height={5}
              />
              <rect
                className={hold ? 'd-open-box' : 'd-full'}
                x={p50 - (hold ? 6 : 2)}
                y={y - 7}
                width={hold ? 12 : 4}
                height={14}
              />
            </g>
          );
        })}
      </svg>
    </div>
  );
}
