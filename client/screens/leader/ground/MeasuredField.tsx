import { Field } from '../../../parts/Field.tsx';
import { words } from '../../../words/words.ts';
import { aboutField, type FormField } from './groundForm.ts';

type Props = {
  readonly field: FormField;
  /** As typed; null is "not measured". */
  readonly value: string | null;
  readonly fault: string | undefined;
  /** It is unknown, and the answer comes out otherwise for one value than for another. */
  readonly decides: boolean;
  readonly onChange: (value: string | null) => void;
};

/** One measured number with its range and why it matters; what may stay unknown can be marked so. */
export function MeasuredField({ field, value, fault, decides, onChange }: Props) {
  const said = words.ground;
  const { least, most, unit, reason, mayBeUnknown } = aboutField(field);
  const label = said.fields[field.field];
  const range = said.range(String(least), String(most), unit);
  return (
    <div className="measured" data-field={field.field}>
      <Field
        label={label}
        hint={`${range}. ${reason}${decides ? ` ${said.hangs}` : ''}`}
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
      {mayBeUnknown ? (
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
