import { useState } from 'react';
import { usualSizes } from '#domain/forecast/moves/lever.ts';
import type { LeverSizesWanted } from '#shared/wireForecast.ts';
import { Field } from '../../parts/Field.tsx';
import { words } from '../../words/words.ts';

const limits = {
  people: [1, 6],
  truckEarlier: [1, 600],
  vehicleWait: [1, 600],
  winch: [1, 10],
} as const satisfies Record<keyof LeverSizesWanted, readonly [number, number]>;

type Size = keyof typeof limits;

/** The number a person wrote for a size; null when it is none that can be tried. */
export function readSize(size: Size, text: string): number | null {
  const [from, to] = limits[size];
  const value = Number(text.replace(',', '.'));
  if (text.trim() === '' || !(value >= from && value <= to)) return null;
  return size === 'people' && !Number.isInteger(value) ? null : value;
}

type Props = {
  /** Told with each change; null while something written cannot be tried. */
  readonly onChange: (sizes: LeverSizesWanted | null) => void;
};

/** How far each lever is pulled: what is true of this site, and not of every other. */
export function LeverSizes({ onChange }: Props) {
  const said = words.forecast.levers;
  const [texts, setTexts] = useState<Readonly<Record<Size, string>>>({
    people: String(usualSizes.people),
    truckEarlier: String(usualSizes.truckEarlier),
    vehicleWait: String(usualSizes.vehicleWait),
    winch: String(usualSizes.winch),
  });
  const labels: Readonly<Record<Size, string>> = {
    people: said.people,
    truckEarlier: said.truck,
    vehicleWait: said.vehicle,
    winch: said.winch,
  };

  function write(size: Size, text: string): void {
    const next = { ...texts, [size]: text };
    setTexts(next);
    const read = (Object.keys(limits) as Size[]).map((one) => [one, readSize(one, next[one])]);
    onChange(
      read.some(([, value]) => value === null)
        ? null
        : (Object.fromEntries(read) as LeverSizesWanted),
    );
  }

  return (
    <details className="quiet no-print">
      <summary>{said.sizes}</summary>
      <div className="two-fields">
        {(Object.keys(limits) as Size[]).map((size) => (
          <Field
            key={size}
            label={labels[size]}
            fault={
              readSize(size, texts[size]) === null
                ? said.wrong(limits[size][0], limits[size][1])
                : undefined
            }
          >
            {(ties) => (
              <input
                {...ties}
                inputMode="decimal"
                value={texts[size]}
                onChange={({ target }) => write(size, target.value)}
              />
            )}
          </Field>
        ))}
      </div>
    </details>
  );
}
