import { Field } from '../../parts/Field.tsx';

type Props = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly longest?: number;
};

/** A few words by keyboard. */
export function WordsField({ label, value, onChange, longest = 400 }: Props) {
  return (
    <Field label={label}>
      {(ties) => (
        <input
          {...ties}
          value={value}
          maxLength={longest}
          autoComplete="off"
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}
