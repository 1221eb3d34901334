import type { StoresOfKit } from '#shared/wireStores.ts';
import { useWidth } from '../../drawing/useWidth.ts';
import { metres, tonnes } from '../../words/units.ts';
import { words } from '../../words/words.ts';

const lane = 46;
const beam = 26;
const edge = 64;

/** The stacks on both sides of the way to the gap, to scale along it: the gap to the right, as on every side view. */
export function StacksFigure({ kit }: { readonly kit: StoresOfKit }) {
  const [ref, width] = useWidth<HTMLDivElement>(320);
  const said = words.stores;
  const longest = Math.max(1, ...kit.stacks.map(({ to }) => to));
  const scale = (width - edge - 8) / longest;
  const rollers = width - edge;
  const top = 18;
  return (
    <div ref={ref} className="stacks">
      <svg width={width} height={top + 2 * lane + beam + 22} role="img" aria-label={said.stacksAlt}>
        <rect
          x={8}
          y={top + lane}
          width={rollers - 8}
          height={beam}
          fill="none"
          stroke="var(--ink)"
          strokeWidth="2"
        />
        <line
          x1={rollers}
          x2={rollers}
          y1={top - 6}
          y2={top + 2 * lane + beam + 6}
          stroke="var(--ink)"
          strokeWidth="2"
        />
        <text x={rollers + 6} y={top + lane + beam / 2 + 5} fill="var(--ink)" fontSize="13">
          {said.gap}
        </text>
        <text x={rollers} y={12} textAnchor="end" fill="var(--ink-2)" fontSize="13">
          {said.rollers}
        </text>
        {kit.stacks.map(({ group, side, from, to }, row) => {
          const y = side === 'left' ? top : top + lane + beam + 6;
          return (
            <g key={group}>
              <rect
                x={rollers - to * scale}
                y={y}
                width={(to - from) * scale}
                height={lane - 6}
                fill="var(--ground)"
                stroke="var(--ink)"
              />
              <text
                x={rollers - ((to + from) / 2) * scale}
                y={y + lane / 2 + 2}
                textAnchor="middle"
                fill="var(--ink)"
                fontSize="14"
              >
                {row + 1}
              </text>
            </g>
          );
        })}
      </svg>
      <ol className="stack-key">
        {kit.stacks.map(({ group, side, from, to, kilograms }) => (
          <li key={group}>
            {group}, {said[side]}, {metres(from)} to {metres(to)}, {tonnes(kilograms)}
          </li>
        ))}
      </ol>
    </div>
  );
}
