import { useState } from 'react';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { Dress, Effort } from '#domain/forecast/doubt/heat.ts';
import { Field } from '../../parts/Field.tsx';
import { words } from '../../words/words.ts';
import { type DoubtPart, switched } from './doubtDraft.ts';
import { type Figure, figuresOf } from './doubtFigures.ts';

type Props = {
  readonly of: DoubtPart;
  readonly name: string;
  readonly on: boolean;
  /** What is assumed, with its figure. */
  readonly value: string;
  readonly source: string;
  readonly doubt: Doubt;
  /** Null for those who only read. */
  readonly onChange: ((doubt: Doubt) => void) | null;
};

/** One source: its switch, what it assumes, where that comes from, and its figures to change. */
export function DoubtItem({ of, name, on, value, source, doubt, onChange }: Props) {
  const said = words.forecast.doubt;
  const figures = figuresOf(doubt, of);
  return (
    <li className={on ? 'doubt-item' : 'doubt-item is-off'}>
      {onChange ? (
        <label className="tick">
          <input
            type="checkbox"
            checked={on}
            onChange={(event) => onChange(switched(doubt, of, event.target.checked))}
          />
          <strong>{name}</strong>
          <span className="second" aria-hidden="true">
            {on ? said.on : said.off}
          </span>
        </label>
      ) : (
        <p>
          <strong>{name}</strong> <span className="second">{on ? said.on : said.off}</span>
        </p>
      )}
      <div className="doubt-facts">
        <p>{value}</p>
        <p className="second small">{said.from(source)}</p>
        {onChange && figures.length > 0 ? (
          <details className="quiet no-print">
            <summary aria-label={said.changeOne(name)}>{said.change}</summary>
            <div className="doubt-fields">
              {figures.map((figure) => (
                <FigureField key={figure.name} figure={figure} onChange={onChange} />
              ))}
              {of.part === 'light' ? (
                <label className="tick">
                  <input
                    type="checkbox"
                    checked={doubt.light.lights}
                    onChange={(event) =>
                      onChange({
                        ...doubt,
                        light: { ...doubt.light, lights: event.target.checked },
                      })
                    }
                  />
                  {said.fields.lights}
                </label>
              ) : null}
              {of.part === 'heat' ? <HeatFields doubt={doubt} onChange={onChange} /> : null}
            </div>
          </details>
        ) : null}
      </div>
    </li>
  );
}

type FieldProps = { readonly figure: Figure; readonly onChange: (doubt: Doubt) => void };

function FigureField({ figure, onChange }: FieldProps) {
  const { label, hint, from, to, value, set } = figure;
  const [text, setText] = useState(String(value));
  const [wrong, setWrong] = useState(false);
  // Dropped or given way from outside: what stands in the field follows.
  const shown = wrong || Number(text) === value ? text : String(value);
  return (
    <Field
      label={label}
      hint={hint}
      fault={wrong ? words.forecast.doubt.fields.wrong(from, to) : undefined}
    >
      {(ties) => (
        <input
          {...ties}
          inputMode="decimal"
          value={shown}
          onChange={({ target }) => {
            const written = Number(target.value.replace(',', '.'));
            const fits = target.value.trim() !== '' && written >= from && written <= to;
            setText(target.value.replace(',', '.'));
            setWrong(!fits);
            if (fits) onChange(set(written));
          }}
        />
      )}
    </Field>
  );
}

type HeatProps = { readonly doubt: Doubt; readonly onChange: (doubt: Doubt) => void };

function HeatFields({ doubt, onChange }: HeatProps) {
  const said = words.forecast.doubt.fields;
  const { heat } = doubt;
  return (
    <>
      <Field label={said.effort}>
        {(ties) => (
          <select
            {...ties}
            value={heat.effort}
            onChange={({ target }) =>
              onChange({ ...doubt, heat: { ...heat, effort: target.value as Effort } })
            }
          >
            {Effort.anyOf.map(({ const: one }) => (
              <option key={one} value={one}>
                {said.efforts[one]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label={said.dress}>
        {(ties) => (
          <select
            {...ties}
            value={heat.dress}
            onChange={({ target }) =>
              onChange({ ...doubt, heat: { ...heat, dress: target.value as Dress } })
            }
          >
            {Dress.anyOf.map(({ const: one }) => (
              <option key={one} value={one}>
                {said.dresses[one]}
              </option>
            ))}
          </select>
        )}
      </Field>
    </>
  );
}
