import { useId } from 'react';
import type { Measure } from '#domain/tasks/hold.ts';
import { Field } from '../../parts/Field.tsx';
import { words } from '../../words/words.ts';
import { againstWords } from './measures.ts';

type Props = {
  readonly measure: Measure;
  readonly value: string | boolean | undefined;
  readonly fault: string | undefined;
  readonly onChange: (value: string | boolean) => void;
};

/** One value to measure or to see, with its limit beside it. */
export function MeasureField({ measure, value, fault, onChange }: Props) {
  const unit = words.inspector.units[measure.unit];
  if (measure.unit === 'yes') return <YesField {...{ measure, value, fault, onChange }} />;
  return (
    <Field
      label={unit === '' ? measure.name : `${measure.name}, ${unit}`}
      hint={againstWords(measure)}
      fault={fault}
      className="measure"
    >
      {(ties) => (
        <input
          {...ties}
          inputMode="decimal"
          autoComplete="off"
          value={typeof value === 'string' ? value : ''}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

function YesField({ measure, value, fault, onChange }: Props) {
  const id = useId();
  const described = fault ? `${id}-limit ${id}-fault` : `${id}-limit`;
  return (
    <fieldset className="measure measure-yes" aria-describedby={described}>
      <legend>{measure.name}</legend>
      <div className="row">
        {([true, false] as const).map((answer) => (
          <label key={String(answer)} className="choice">
            <input
              type="radio"
              name={id}
              checked={value === answer}
              onChange={() => onChange(answer)}
            />
            {answer ? words.inspector.yes : words.inspector.no}
          </label>
        ))}
      </div>
      <p id={`${id}-limit`} className="second small">
        {againstWords(measure)}
      </p>
      {fault ? (
        <p id={`${id}-fault`} className="fault">
          {fault}
        </p>
      ) : null}
    </fieldset>
  );
}
