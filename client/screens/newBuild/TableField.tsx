import { useId } from 'react';
import { Field } from '../../parts/Field.tsx';
import { words } from '../../words/words.ts';

type Props = {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly fault?: string | undefined;
  readonly onChange: (text: string) => void;
};

/** One CSV table, pasted or read from a file. */
export function TableField({ label, hint, value, fault, onChange }: Props) {
  const id = useId();
  return (
    <div className="stack">
      <Field label={label} hint={hint} fault={fault}>
        {(ties) => (
          <textarea
            {...ties}
            rows={5}
            spellCheck={false}
            wrap="off"
            value={value}
            onChange={(event) => onChange(event.target.value)}
          />
        )}
      </Field>
      <div>
        <label htmlFor={id} className="small">
          {words.newBuild.file(label)}
        </label>{' '}
        <input
          id={id}
          type="file"
          accept=".csv,text/csv,text/plain"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            void file?.text().then(onChange);
          }}
        />
      </div>
    </div>
  );
}
