import { useState } from 'react';
import type { Crew } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import type { Say } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';

type Props = { readonly crew: Crew; readonly say: Say['say']; readonly busy: boolean };

/** What can be told of a crew now: strength, somebody hurt, relieved. */
export function CrewTells({ crew, say, busy }: Props) {
  const { state } = useBuild();
  const [fit, setFit] = useState(String(state.crews[crew.id]?.fit ?? crew.people));
  const [what, setWhat] = useState('');
  const [out, setOut] = useState(false);
  const texts = words.crews;
  const whole = /^\d{1,3}$/.test(fit.trim()) && Number(fit) <= 500;
  return (
    <section className="stack" aria-label={texts.tellOf(crew.name)}>
      <h3>{texts.tell}</h3>
      <div className="row beside">
        <Field label={texts.fit} fault={whole ? undefined : texts.peopleFault}>
          {(ties) => (
            <input
              {...ties}
              inputMode="numeric"
              autoComplete="off"
              value={fit}
              onChange={(event) => setFit(event.target.value)}
            />
          )}
        </Field>
        <Button
          disabled={busy || !whole}
          onClick={() => void say('tell-strength', { crew: crew.id, fit: Number(fit) })}
        >
          {texts.tellFit}
        </Button>
      </div>
      <div className="row beside">
        <Field label={texts.hurtWhat}>
          {(ties) => (
            <input
              {...ties}
              autoComplete="off"
              maxLength={400}
              value={what}
              onChange={(event) => setWhat(event.target.value)}
            />
          )}
        </Field>
        <label className="tick">
          <input type="checkbox" checked={out} onChange={(event) => setOut(event.target.checked)} />
          {texts.out}
        </label>
        <Button
          disabled={busy || what.trim() === ''}
          onClick={() => {
            void say('tell-hurt', { crew: crew.id, what: what.trim(), outOfWork: out });
            setWhat('');
          }}
        >
          {texts.tellHurt}
        </Button>
      </div>
      <div className="row">
        <Button disabled={busy} onClick={() => void say('tell-relief', { crew: crew.id })}>
          {texts.relief}
        </Button>
        <p className="second small">{texts.reliefMore}</p>
      </div>
    </section>
  );
}
