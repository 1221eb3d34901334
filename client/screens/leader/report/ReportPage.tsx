import { useState } from 'react';
import { situationReport } from '#domain/brief/situationReport.ts';
import { usePorts } from '../../../data/ports/ports.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { CopyText } from '../../../parts/CopyText.tsx';
import { Field } from '../../../parts/Field.tsx';
import { readSiteTime } from '../../../parts/siteTime.ts';
import { TimeField } from '../../../parts/TimeField.tsx';
import { iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** The situation report in words, as it stands this minute. */
export function ReportPage() {
  const { state, forecast, now, you, linkKey } = useBuild();
  const { storage } = usePorts();
  const senderKey = `spanwright.sender.${linkKey}`;
  const [sender, setSender] = useState(() => storage.read(senderKey) ?? you.name);
  const [next, setNext] = useState('');
  const texts = words.report;
  const { group, lines } = situationReport({
    state,
    forecast: forecast?.forecast ?? null,
    now: iso(Math.floor(now / 60_000) * 60_000),
    sender: sender.trim() || you.name,
    nextReport: readSiteTime(next, state.zone, now),
  });
  const whole = lines.map(({ title, text }) => `${title}: ${text}`).join('\n');
  return (
    <>
      <h1>{texts.title}</h1>
      <p className="second">{texts.more}</p>
      <div className="two-fields no-print report-fields">
        <Field label={texts.sender} hint={texts.senderHint}>
          {(ties) => (
            <input
              {...ties}
              autoComplete="off"
              maxLength={60}
              value={sender}
              onChange={(event) => {
                setSender(event.target.value);
                storage.write(senderKey, event.target.value);
              }}
            />
          )}
        </Field>
        <TimeField
          label={texts.next}
          hint={texts.nextHint}
          value={next}
          zone={state.zone}
          from={now}
          onChange={setNext}
        />
      </div>
      <dl className="report">
        {lines.map(({ key, title, text }) => (
          <div key={key}>
            <dt>{title}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <details className="quiet no-print">
        <summary>{texts.text}</summary>
        <CopyText label={texts.group(group)} text={whole} rows={12} />
      </details>
    </>
  );
}
