import { Field } from '../../../parts/Field.tsx';
import { words } from '../../../words/words.ts';
import { formFields, type GroundChange, type GroundForm, type Measured } from './groundForm.ts';
import { MeasuredField } from './MeasuredField.tsx';

type Props = {
  readonly form: GroundForm;
  readonly faults: ReadonlyMap<Measured, string>;
  /** Unknown fields that the answer hangs on. */
  readonly decide: ReadonlySet<string>;
  /** Also say what is missing; while somebody still types only what is wrong. */
  readonly strict: boolean;
  readonly onChange: (change: GroundChange) => void;
};

const ofBank = ['height', 'setback'] as const;
const moreOfBank = ['slope', 'strength', 'crossFall', 'approach.length', 'approach.slope'] as const;

/** Everything measured at the site, in the order in which one walks it. */
export function GroundFields({ form, faults, decide, strict, onChange }: Props) {
  const said = words.ground;
  const { values } = form;
  const measured = (name: Measured) => {
    const field = formFields.find((one) => one.field === name);
    return field ? (
      <MeasuredField
        key={name}
        field={field}
        value={values[name]}
        fault={strict || (values[name] ?? '').trim() !== '' ? faults.get(name) : undefined}
        decides={decide.has(name)}
        onChange={(value) => onChange({ values: { [name]: value } })}
      />
    ) : null;
  };
  return (
    <>
      <fieldset className="ground-group">
        <legend>{said.load}</legend>
        {measured('gap')}
        {measured('loadClass')}
      </fieldset>
      {(['near', 'far'] as const).map((bank) => {
        const more: readonly Measured[] = [
          ...moreOfBank.map((name) => `${bank}.${name}` as const),
          ...(bank === 'near' ? (['rollerFall'] as const) : []),
        ];
        const unknown = more.filter((name) => values[name] === null);
        const decides = unknown.filter((name) => decide.has(name)).length;
        return (
          <fieldset key={bank} className="ground-group">
            <legend>{said.bank[bank]}</legend>
            {bank === 'near' ? measured('roomBehind') : null}
            {ofBank.map((name) => measured(`${bank}.${name}`))}
            <Select
              label={said.kind}
              value={form[bank].kind}
              options={{ made: said.made, natural: said.natural }}
              onChange={(kind) => onChange({ [bank]: { kind } })}
            />
            <Select
              label={said.soil}
              value={form[bank].soil}
              options={said.soils}
              onChange={(soil) => onChange({ [bank]: { soil } })}
            />
            <details className="quiet">
              <summary>
                {said.more[bank]}: {said.moreUnknown(unknown.length)}
                {decides > 0 ? said.moreDecide(decides) : ''}
              </summary>
              <div className="ground-more">{more.map(measured)}</div>
            </details>
          </fieldset>
        );
      })}
      <fieldset className="ground-group">
        <legend>{said.water}</legend>
        {(['water.depth', 'water.rise', 'water.level', 'water.limit'] as const).map(measured)}
      </fieldset>
      <fieldset className="ground-group">
        <legend>{said.place}</legend>
        {(['wind', 'place.latitude', 'place.longitude'] as const).map(measured)}
      </fieldset>
    </>
  );
}

function Select<Value extends string>({
  label,
  value,
  options,
  onChange,
}: {
  readonly label: string;
  readonly value: Value;
  readonly options: Readonly<Record<Value, string>>;
  readonly onChange: (value: Value) => void;
}) {
  return (
    <Field label={label}>
      {(ties) => (
        <select {...ties} value={value} onChange={(event) => onChange(event.target.value as Value)}>
          {(Object.keys(options) as Value[]).map((one) => (
            <option key={one} value={one}>
              {options[one]}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
