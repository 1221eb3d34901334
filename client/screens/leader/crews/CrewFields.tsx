import { useBuild } from '../../../data/useBuild.ts';
import { Field } from '../../../parts/Field.tsx';
import { TimeField } from '../../../parts/TimeField.tsx';
import { words } from '../../../words/words.ts';
import type { CrewFaults, TypedCrew } from './crewForm.ts';

type Props = {
  readonly typed: TypedCrew;
  readonly faults: CrewFaults;
  readonly onChange: (typed: TypedCrew) => void;
  /** A new crew is given its id, its people and its hours. */
  readonly isNew?: boolean;
};

/** The fields of one crew. */
export function CrewFields({ typed, faults, onChange, isNew = false }: Props) {
  const { state } = useBuild();
  const said = words.crews;
  const text = (
    key: 'id' | 'name' | 'people' | 'chief',
    label: string,
    more: { hint?: string; inputMode?: 'numeric' } = {},
  ) => (
    <Field label={label} hint={more.hint} fault={key === 'chief' ? undefined : faults[key]}>
      {(ties) => (
        <input
          {...ties}
          autoComplete="off"
          maxLength={60}
          inputMode={more.inputMode}
          value={typed[key]}
          onChange={(event) => onChange({ ...typed, [key]: event.target.value })}
        />
      )}
    </Field>
  );
  const time = (key: 'from' | 'to', label: string) => (
    <TimeField
      label={label}
      hint={said.timeHint}
      fault={typed[key] === '' ? undefined : faults.hours}
      value={typed[key]}
      zone={state.zone}
      from={state.start}
      onChange={(text) => onChange({ ...typed, [key]: text })}
    />
  );
  return (
    <>
      <div className="two-fields">
        {isNew ? text('id', said.newId, { hint: said.newIdHint }) : null}
        {text('name', said.name)}
        {isNew ? text('people', said.people, { inputMode: 'numeric' }) : null}
        {text('chief', said.chiefField)}
        {isNew ? time('from', said.fromField) : null}
        {isNew ? time('to', said.toField) : null}
      </div>
      <label className="tick">
        <input
          type="checkbox"
          checked={typed.attached}
          onChange={(event) => onChange({ ...typed, attached: event.target.checked })}
        />
        {said.attachedField}
      </label>
    </>
  );
}
