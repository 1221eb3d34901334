import { useId } from 'react';
import { confidenceWords } from '#domain/brief/confidence.ts';
import { Field } from '../../parts/Field.tsx';
import { TimeField } from '../../parts/TimeField.tsx';
import { words } from '../../words/words.ts';
import { type BuildFaults, isZone, type TypedBuild } from './openForm.ts';

type Props = {
  readonly typed: TypedBuild;
  readonly faults: BuildFaults;
  /** Milliseconds. */
  readonly now: number;
  readonly onChange: (change: Partial<TypedBuild>) => void;
};

const confidences = [0.5, 0.8, 0.9, 0.95] as const;

/** Name, unit, zone and times of a build. */
export function BuildFields({ typed, faults, now, onChange }: Props) {
  const zones = useId();
  const said = words.newBuild;
  // Times are read in the zone typed; while it is none, in UTC.
  const zone = isZone(typed.zone) ? typed.zone : 'UTC';
  return (
    <div className="two-fields">
      <Field label={said.name} hint={said.nameHint} fault={faults.name}>
        {(ties) => (
          <input
            {...ties}
            autoComplete="off"
            maxLength={80}
            value={typed.name}
            onChange={(event) => onChange({ name: event.target.value })}
          />
        )}
      </Field>
      <Field label={said.unit} hint={said.unitHint}>
        {(ties) => (
          <input
            {...ties}
            autoComplete="off"
            maxLength={80}
            value={typed.unit}
            onChange={(event) => onChange({ unit: event.target.value })}
          />
        )}
      </Field>
      <Field label={said.zone} hint={said.zoneHint} fault={faults.zone}>
        {(ties) => (
          <input
            {...ties}
            list={zones}
            autoComplete="off"
            spellCheck={false}
            value={typed.zone}
            onChange={(event) => onChange({ zone: event.target.value })}
          />
        )}
      </Field>
      <datalist id={zones}>
        {['UTC', ...Intl.supportedValuesOf('timeZone')].map((one) => (
          <option key={one} value={one} />
        ))}
      </datalist>
      <Field label={said.confidence} hint={said.confidenceHint}>
        {(ties) => (
          <select
            {...ties}
            value={typed.confidence}
            onChange={(event) => onChange({ confidence: Number(event.target.value) })}
          >
            {confidences.map((one) => (
              <option key={one} value={one}>
                {confidenceWords(one)}
              </option>
            ))}
          </select>
        )}
      </Field>
      <TimeField
        label={said.start}
        value={typed.start}
        zone={zone}
        from={now - 60 * 60_000}
        fault={faults.start}
        onChange={(start) => onChange({ start })}
      />
      <TimeField
        label={said.asked}
        hint={said.askedHint}
        value={typed.asked}
        zone={zone}
        from={now}
        fault={faults.asked}
        onChange={(asked) => onChange({ asked })}
      />
    </div>
  );
}
