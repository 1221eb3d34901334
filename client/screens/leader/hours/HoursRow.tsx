import { type ReactNode, useEffect, useRef } from 'react';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { TimeField } from '../../../parts/TimeField.tsx';
import { words } from '../../../words/words.ts';

type RowProps = {
  readonly name: string;
  /** Just added: whoever added it goes on typing here. */
  readonly fresh: boolean;
  readonly onRemove: () => void;
  readonly children: ReactNode;
};

/** One line of a list in the form: its fields, and the way to take it out. */
export function HoursRow({ name, fresh, onRemove, children }: RowProps) {
  const row = useRef<HTMLFieldSetElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when it comes
  useEffect(() => {
    if (fresh) row.current?.querySelector<HTMLElement>('input, select')?.focus();
  }, []);
  return (
    <fieldset ref={row} className="hours-row">
      <legend>{name}</legend>
      {children}
      <Button look="plain" aria-label={words.hours.takeOutOf(name)} onClick={onRemove}>
        {words.hours.takeOut}
      </Button>
    </fieldset>
  );
}

type FieldProps = {
  readonly label: string;
  readonly value: string;
  readonly fault: string | undefined;
  readonly hint?: string;
  readonly onChange: (text: string) => void;
};

/** A time of day at the site. */
export function HourField({ label, value, fault, hint, onChange }: FieldProps) {
  const { state } = useBuild();
  return (
    <TimeField
      label={label}
      hint={hint}
      fault={fault}
      value={value}
      zone={state.zone}
      from={state.start}
      onChange={onChange}
    />
  );
}

/** How many people. */
export function CountField({ label, value, fault, hint, onChange }: FieldProps) {
  return (
    <Field label={label} hint={hint} fault={fault}>
      {(ties) => (
        <input
          {...ties}
          inputMode="numeric"
          autoComplete="off"
          maxLength={3}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}
