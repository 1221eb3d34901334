import { useId } from 'react';
import type { Concession } from '#domain/progress/command.ts';
import { Field } from '../../parts/Field.tsx';
import { words } from '../../words/words.ts';

type Props = {
  readonly concession: Concession;
  /** Somebody tried to pass with it: what is empty is a fault. */
  readonly tried: boolean;
  readonly onChange: (concession: Concession) => void;
};

/** Who off the site lets a value outside a hard limit stand, in what post, and why. */
export function ConcessionForm({ concession, tried, onChange }: Props) {
  const note = useId();
  const said = words.inspector;
  const fields = [
    ['name', said.conceder, said.concederHint, 60],
    ['authority', said.authority, said.authorityHint, 80],
    ['reason', said.concessionReason, said.concessionReasonHint, 400],
  ] as const;
  return (
    <fieldset className="concession stack-wide" aria-describedby={note}>
      <legend>{said.concede}</legend>
      <div className="measures">
        {fields.map(([field, label, hint, longest]) => (
          <Field
            key={field}
            label={label}
            hint={hint}
            fault={tried && concession[field].trim() === '' ? said.concessionMissing : undefined}
          >
            {(ties) => (
              <input
                {...ties}
                autoComplete="off"
                maxLength={longest}
                value={concession[field]}
                onChange={(event) => onChange({ ...concession, [field]: event.target.value })}
              />
            )}
          </Field>
        ))}
      </div>
      <p id={note} className="second small">
        {said.concessionNote}
      </p>
    </fieldset>
  );
}
