import { Field } from '../../../parts/Field.tsx';
import { words } from '../../../words/words.ts';
import type { GroundForm, Measured } from './groundForm.ts';
import { MeasuredField } from './MeasuredField.tsx';

type Props = {
  readonly form: GroundForm;
  readonly faults: ReadonlyMap<Measured, string>;
  /** Also say what is missing; while somebody still types only what is wrong. */
  readonly strict: boolean;
  readonly onChange: (change: Partial<GroundForm>) => void;
};

/** Everything measured at the site, in the order in which one walks it. */
export function GroundFields({ form, faults, strict, onChange }: Props) {
  const said = words.ground;
  const measured = (field: Measured) => (
    <MeasuredField
      field={field}
      value={form[field]}
      fault={strict || (form[field] ?? '').trim() !== '' ? faults.get(field) : undefined}
      onChange={(value) => onChange({ [field]: value })}
    />
  );
  const kind = (bank: 'near' | 'far') => (
    <Field label={said.kind}>
      {(ties) => (
        <select
          {...ties}
          value={form[`${bank}Kind`]}
          onChange={(event) =>
            onChange({ [`${bank}Kind`]: event.target.value === 'natural' ? 'natural' : 'made' })
          }
        >
          <option value="made">{said.made}</option>
          <option value="natural">{said.natural}</option>
        </select>
      )}
    </Field>
  );
  return (
    <>
      <fieldset className="ground-group">
        <legend>{said.load}</legend>
        {measured('gap')}
        {measured('loadClass')}
      </fieldset>
      {(['near', 'far'] as const).map((bank) => (
        <fieldset key={bank} className="ground-group">
          <legend>{said.bank[bank]}</legend>
          {bank === 'near' ? measured('roomBehind') : null}
          {measured(`${bank}Height`)}
          {measured(`${bank}Setback`)}
          {kind(bank)}
        </fieldset>
      ))}
      <fieldset className="ground-group">
        <legend>{said.water}</legend>
        {measured('depth')}
        {measured('rise')}
      </fieldset>
      <fieldset className="ground-group">
        <legend>{said.place}</legend>
        {measured('latitude')}
        {measured('longitude')}
      </fieldset>
    </>
  );
}
