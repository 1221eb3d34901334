import { type FormEvent, useState } from 'react';
import { confidenceWords } from '#domain/brief/confidence.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { readSiteTime, writeSiteTime } from '../../../parts/siteTime.ts';
import { TimeField } from '../../../parts/TimeField.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';

const choices = [0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95] as const;

/** What the headline promises, and the time that was asked for. */
export function AskedFor() {
  const { state } = useBuild();
  const { said, busy, say } = useSay();
  const { zone, confidence } = state;
  const [sure, setSure] = useState(confidence);
  const [time, setTime] = useState(
    state.askedFor ? writeSiteTime(state.askedFor, zone, state.start) : '',
  );
  const texts = words.leader.asked;
  const offered = [...new Set([...choices, confidence])].sort((a, b) => a - b);

  function setAsked(event: FormEvent): void {
    event.preventDefault();
    const askedFor = time.trim() === '' ? null : readSiteTime(time, zone, state.start);
    const wrong = time.trim() !== '' && askedFor === null;
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
          <TimeField
            label={texts.time}
            hint={texts.timeHint}
            value={time}
            zone={state.zone}
            from={state.start}
            onChange={setTime}
          />
          <Button type="submit" disabled={busy} aria-label={texts.setTime}>
            {texts.set}
          </Button>
        </form>
        <SaidLine said={said} />
      </div>
    </details>
  );
}
