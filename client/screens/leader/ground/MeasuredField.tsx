import { Field } from '../../../parts/Field.tsx';
import { words } from '../../../words/words.ts';
import { type Measured, mayBeUnknown, ranges } from './groundForm.ts';

type Props = {
  readonly field: Measured;
  /** As typed; null is "not measured". */
  readonly value: string | null;
  readonly fault: string | undefined;
  readonly onChange: (value: string | null) => void;
};

/** One measured number with its range and why it matters; what may stay unknown can be marked so. */
export function MeasuredField({ field, value, fault, onChange }: Props) {
  const said = words.ground;
  const [least, most] = ranges[field];
  const label = said.fields[field];
  return (
    <div className="measured">
      <Field
        label={label}
        hint={`${said.range(String(least), String(most))}. ${said.why[field]}`}
        fault={fault}
      >
        {(ties) => (
          <input
            {...ties}
            inputMode="decimal"
            autoComplete="off"
            disabled={value === null}
            placeholder={value === null ? said.notMeasured : undefined}
            value={value ?? ''}
            onChange={(event) => onChange(event.target.value)}
          />
        )}
      </Field>
      {mayBeUnknown.has(field) ? (
        <label className="unknown">
          <input
            type="checkbox"
            aria-label={said.notMeasuredOf(label)}
            checked={value === null}
            onChange={(event) => onChange(event.target.checked ? null : '')}
          />
          {said.notMeasured}
        </label>
      ) : null}
    </div>
  );
}
