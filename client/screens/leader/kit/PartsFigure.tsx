import type { Kit } from '#domain/kit/kit.ts';
import { metres } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** Pixels per metre: the longest part still fits a narrow phone. */
const widest = 260;

/** The kit's parts from above at one scale, each with its name, size and mass. */
export function PartsFigure({ kit }: { readonly kit: Kit }) {
  const said = words.kitFile;
  const longest = Math.max(1, ...kit.parts.map(({ size }) => size?.length ?? 0));
  const scale = widest / longest;
  return (
    <section className="stack" aria-label={said.parts}>
      <h3>{said.parts}</h3>
      <ul className="stack">
        {kit.parts.map(({ id, name, mass, size, count, per }) => {
          const high = Math.max(2, (size?.width ?? 0) * scale);
          const measures = size
            ? `${metres(size.length, 2)} × ${metres(size.width, 2)} × ${metres(size.height, 2)}, `
            : '';
          return (
            <li key={id} className="stack-tight">
              <span>{said.partLine(name, measures, `${mass} kg`, count, per)}</span>
              {size ? (
                <svg width={widest + 2} height={high + 2} aria-hidden="true">
                  <rect
                    x="1"
                    y="1"
                    width={size.length * scale}
                    height={high}
                    fill="none"
                    stroke="var(--ink)"
                    strokeWidth="1.5"
                  />
                </svg>
              ) : null}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
