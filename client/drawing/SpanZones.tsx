import { words } from '../words/words.ts';
import type { Stretch } from './spanGeometry.ts';
import type { SpanView } from './spanView.ts';

/** A part of the site and who should be there by plan. */
export type NamedZone = {
  readonly zone: string;
  readonly name: string;
  readonly people: number;
  /** A keep-off task runs there. */
  readonly closed: boolean;
};

/** Space over the bridge that the brackets take. */
export const zonesHeight = 62;

type Props = {
  readonly view: SpanView;
  readonly zones: readonly NamedZone[];
  /** The bridge lies on both banks. */
  readonly seated: boolean;
};

/** Brackets over the parts of the site, with who should be there by plan. Zones that are no stretch stand in words. */
export function SpanZones({ view, zones, seated }: Props) {
  const { x } = view;
  const laid = zones
    .flatMap((zone) => {
      const stretch = stretchOf(zone.zone, view);
      const empty = zone.people === 0 && !zone.closed;
      // Once the bridge lies on both banks, where it was put together matters only while somebody is there.
      return stretch && !(empty && seated)
        ? [{ ...zone, left: x(stretch.from) + 5, right: x(stretch.to) - 5 }]
        : [];
    })
    .sort((a, b) => a.left - b.left);
  let taken = Number.NEGATIVE_INFINITY;
  return (
    <g>
      {laid.map(({ zone, name, people, closed, left, right }) => {
        const label = labelOf(name, people, closed, right - left);
        const half = (label.length * 7.4) / 2;
        const middle = Math.min(Math.max((left + right) / 2, half + 4), view.width - half - 4);
        // A label that would run into the one before stands one line higher.
        const up = middle - half < taken + 8;
        taken = Math.max(taken, middle + half);
        return (
          <g key={zone}>
            <path className={closed ? 'd-heavy' : 'd-thin'} d={`M${left} 58V48H${right}V58`} />
            <text
              className={`d-text small ${closed ? 'heavy' : ''}`}
              x={middle}
              y={up ? 20 : 40}
              textAnchor="middle"
            >
              {label}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function labelOf(name: string, people: number, closed: boolean, room: number): string {
  const said = words.span;
  if (closed) return said.zoneClosed(name);
  if (people === 0) return said.zoneEmpty(name.split(',')[0] ?? name);
  const long = said.zone(name, people);
  return long.length * 7.4 <= room ? long : said.zoneShort(name.split(',')[0] ?? name, people);
}

/** Where on the ground a zone lies. Kits name their zones; these are the ones a side view can show. */
function stretchOf(zone: string, { geometry }: SpanView): Stretch | null {
  const { near, far, rollers, tail, from, to } = geometry;
  switch (zone) {
    case 'stores':
      return { from, to: Math.max(from + 4, Math.min(tail, rollers.rear) - 1) };
    case 'assembly':
      return { from: Math.min(tail, rollers.rear - 3) - 0.5, to: rollers.rear - 1 };
    case 'rollers':
      return { from: rollers.rear - 0.5, to: near.x };
    case 'ahead':
      return { from: near.x + 0.5, to: far.x - 0.5 };
    case 'landing':
      return { from: far.x, to };
    default:
      return null;
  }
}
