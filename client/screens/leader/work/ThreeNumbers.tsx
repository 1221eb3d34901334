import { useId } from 'react';
import { numberIn } from '../../inspector/measures.ts';

/** Three numbers as typed, the smallest first. */
export type Three = readonly [string, string, string];

/** The numbers when they are some, not negative and in rising order; null otherwise. */
export function threeIn(typed: Three, whole: boolean): [number, number, number] | null {
  const [a, b, c] = typed.map(numberIn);
  if (a === undefined || b === undefined || c === undefined) return null;
  if (a === null || b === null || c === null) return null;
  if (whole && ![a, b, c].every(Number.isInteger)) return null;
  return 0 <= a && a <= b && b <= c ? [a, b, c] : null;
}

type Props = {
  readonly legend: string;
  readonly labels: Three;
  readonly value: Three;
  readonly fault: string | null;
  readonly onChange: (value: Three) => void;
};

/** Three numbers side by side that rise: quick, likely, slow; least, usual, most. */
export function ThreeNumbers({ legend, labels, value, fault, onChange }: Props) {
  const id = useId();
  return (
    <fieldset className="three" aria-describedby={fault ? `${id}-fault` : undefined}>
      <legend>{legend}</legend>
      {labels.map((label, at) => (
        <label key={label} className="field">
          <span className="label">{label}</span>
          <input
            inputMode="decimal"
            autoComplete="off"
            aria-invalid={fault ? true : undefined}
            value={value[at]}
            onChange={(event) => {
              const next: [string, string, string] = [...value];
              next[at] = event.target.value;
              onChange(next);
            }}
          />
        </label>
      ))}
      {fault ? (
        <p id={`${id}-fault`} className="fault">
          {fault}
        </p>
      ) : null}
    </fieldset>
  );
}
