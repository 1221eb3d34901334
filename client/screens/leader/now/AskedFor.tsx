import { type FormEvent, useState } from 'react';
import { confidenceWords } from '#domain/brief/confidence.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { fromSiteTime, toSiteTime } from '../../../parts/siteTime.ts';
import { useSay } from '../../../parts/useSay.ts';
import { zoneName } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

const choices = [0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95] as const;

/** What the headline promises, and the time that was asked for. */
export function AskedFor() {
  const { state } = useBuild();
  const { said, busy, say } = useSay();
  const { zone, confidence } = state;
  const [sure, setSure] = useState(confidence);
  const [time, setTime] = useState(state.askedFor ? toSiteTime(state.askedFor, zone) : '');
  const [fault, setFault] = useState(false);
  const texts = words.leader.asked;
  const offered = [...new Set([...choices, confidence])].sort((a, b) => a - b);

  function setAsked(event: FormEvent): void {
    event.preventDefault();
    const askedFor = time === '' ? null : fromSiteTime(time, zone);
    const wrong = time !== '' && askedFor === null;
    setFault(wrong);
    if (!wrong) void say('set-asked-for', { askedFor });
  }

  return (
    <details className="quiet">
      <summary>{texts.title}</summary>
      <div className="stack-wide">
        <form
          className="row"
          onSubmit={(event) => {
            event.preventDefault();
            void say('set-confidence', { confidence: sure });
          }}
        >
          <Field label={texts.confidence} hint={texts.confidenceHint}>
            {(ties) => (
              <select
                {...ties}
                value={sure}
                onChange={(event) => setSure(Number(event.target.value))}
              >
                {offered.map((one) => (
                  <option key={one} value={one}>
                    {confidenceWords(one)}
                  </option>
                ))}
              </select>
            )}
          </Field>
          <Button type="submit" disabled={busy} aria-label={texts.setConfidence}>
            {texts.set}
          </Button>
        </form>
        <form className="row" onSubmit={setAsked} noValidate>
          <Field
            label={texts.time}
            hint={texts.timeHint(zoneName(state.askedFor ?? state.start, zone))}
            fault={fault ? texts.timeFault : undefined}
          >
            {(ties) => (
              <input
                {...ties}
                type="datetime-local"
                value={time}
                onChange={(event) => setTime(event.target.value)}
              />
            )}
          </Field>
          <Button type="submit" disabled={busy} aria-label={texts.setTime}>
            {texts.set}
          </Button>
        </form>
        <SaidLine said={said} />
      </div>
    </details>
  );
}
