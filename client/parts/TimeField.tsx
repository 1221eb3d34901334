import { dateTimeGroup, type Instant } from '../words/units.ts';
import { words } from '../words/words.ts';
import { Field } from './Field.tsx';
import { readSiteTime } from './siteTime.ts';

type Props = {
  readonly label: string;
  /** Said after how the text is understood. */
  readonly hint?: string | undefined;
  readonly value: string;
  /** IANA zone of the site. */
  readonly zone: string;
  /** A time of day means the first one at or after this moment. */
  readonly from: Instant;
  readonly fault?: string | undefined;
  readonly onChange: (text: string) => void;
};

/**
 * A moment at the site, typed as it is spoken: "17:00", "251700". The browser's own control is left alone: it writes
 * dates the way the laptop was sold. What is understood stands below.
 */
export function TimeField({ label, hint, value, zone, from, fault, onChange }: Props) {
  const at = value.trim() === '' ? null : readSiteTime(value, zone, from);
  const understood = at === null ? words.time.how : words.time.means(dateTimeGroup(at, zone));
  const wrong = value.trim() !== '' && at === null ? words.time.wrong : undefined;
  return (
    <Field label={label} hint={[understood, hint].filter(Boolean).join(' ')} fault={fault ?? wrong}>
      {(ties) => (
        <input
          {...ties}
          autoComplete="off"
          spellCheck={false}
          maxLength={20}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}
