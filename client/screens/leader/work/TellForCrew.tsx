import { useState } from 'react';
import { expectedCrews, mayWorkAt } from '#domain/progress/plannedCrews.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';
import { TellForAll } from './TellForAll.tsx';

/** The leader tells what a crew did: started, done, part done, stopped, goes on. */
export function TellForCrew({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const { said, busy, say } = useSay();
  const { named } = expectedCrews(state.plan, task);
  const [crew, setCrew] = useState(named[0] ?? state.work.crews[0]?.id ?? '');
  const [why, setWhy] = useState('');
  const [part, setPart] = useState('50');
  const texts = words.task;
  const of = { task: task.id, crew };
  const share = Number(part) / 100;
  const first = state.work.crews.filter(({ id }) => mayWorkAt(state, task, id));
  const others = state.work.crews.filter((one) => !first.includes(one));

  if (state.work.crews.length === 0) return null;
  return (
    <section className="stack-wide" aria-label={texts.tell}>
      <div>
        <h2>{texts.tell}</h2>
        <p className="second">{texts.tellMore}</p>
      </div>
      <Field label={texts.crew}>
        {(ties) => (
          <select {...ties} value={crew} onChange={(event) => setCrew(event.target.value)}>
            {[...first, ...others].map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        )}
      </Field>
      <div className="row">
        <Button disabled={busy} onClick={() => void say('tell-started', of)}>
          {texts.started}
        </Button>
        <Button disabled={busy} onClick={() => void say('tell-finished', of)}>
          {texts.finished}
        </Button>
        <Button disabled={busy} onClick={() => void say('tell-resumed', of)}>
          {texts.resumed}
        </Button>
      </div>
      <TellForAll task={task} crews={named} say={say} busy={busy} />
      <div className="row beside">
        <Field label={texts.why}>
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
          disabled={busy}
          onClick={() => void say('tell-stopped', { ...of, why: why.trim() })}
        >
          {texts.stopped}
        </Button>
      </div>
      <div className="row beside">
        <Field label={texts.partPercent}>
          {(ties) => (
            <input
              {...ties}
              inputMode="numeric"
              autoComplete="off"
              value={part}
              onChange={(event) => setPart(event.target.value)}
            />
          )}
        </Field>
        <Button
          disabled={busy || part.trim() === '' || !(share >= 0 && share <= 1)}
          onClick={() => void say('tell-part', { ...of, part: share })}
        >
          {texts.part}
        </Button>
      </div>
      <SaidLine said={said} />
    </section>
  );
}
