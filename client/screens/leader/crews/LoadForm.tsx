import { type FormEvent, useState } from 'react';
import type { Load } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { readSiteTime, writeSiteTime } from '../../../parts/siteTime.ts';
import { TimeField } from '../../../parts/TimeField.tsx';
import type { Say } from '../../../parts/useSay.ts';
import { atMinute, minuteOf } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';

type Props = { readonly load: Load; readonly say: Say['say']; readonly busy: boolean };

/** A load that has not come: in, late, or expected at another time for the plan. */
export function LoadForm({ load, say, busy }: Props) {
  const { state } = useBuild();
  const { add, work } = useDraft();
  const drafted = work.loads.find(({ id }) => id === load.id) ?? load;
  const [late, setLate] = useState('15');
  const [why, setWhy] = useState('');
  const [arrives, setArrives] = useState(() =>
    writeSiteTime(atMinute(state.start, drafted.arrives), state.zone, state.start),
  );
  const texts = words.crews;
  const minutes = /^\d{1,4}$/.test(late.trim()) && Number(late) <= 2880 ? Number(late) : null;
  const at = readSiteTime(arrives, state.zone, state.start);

  function gather(event: FormEvent): void {
    event.preventDefault();
    if (at) add({ kind: 'load', load: load.id, arrives: minuteOf(state.start, at) });
  }

  return (
    <div className="item-body">
      <section className="stack" aria-label={texts.tellOf(load.name)}>
        <h3>{texts.tell}</h3>
        <p>
          <Button disabled={busy} onClick={() => void say('tell-load-in', { load: load.id })}>
            {texts.tellIn}
          </Button>
        </p>
        <div className="row beside">
          <Field label={texts.lateMinutes} fault={minutes === null ? texts.lateFault : undefined}>
            {(ties) => (
              <input
                {...ties}
                inputMode="numeric"
                autoComplete="off"
                value={late}
                onChange={(event) => setLate(event.target.value)}
              />
            )}
          </Field>
          <Field label={texts.lateWhy}>
            {(ties) => (
              <input
                {...ties}
                autoComplete="off"
                maxLength={400}
                value={why}
                onChange={(event) => setWhy(event.target.value)}
              />
            )}
          </Field>
          <Button
            disabled={busy || minutes === null}
            onClick={() =>
              void say('tell-load-late', { load: load.id, minutes: minutes ?? 0, why: why.trim() })
            }
          >
            {texts.tellLate}
          </Button>
        </div>
      </section>
      <form className="stack" onSubmit={gather} noValidate aria-label={texts.changeOf(load.name)}>
        <h3>{texts.change}</h3>
        <div className="row beside">
          <TimeField
            label={texts.arrives}
            value={arrives}
            zone={state.zone}
            from={state.start}
            onChange={setArrives}
          />
          <Button type="submit">{texts.add}</Button>
        </div>
      </form>
    </div>
  );
}
