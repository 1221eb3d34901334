import { type FormEvent, useId, useState } from 'react';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { findTask } from './findTask.ts';

/** Lets a task come after another one; gathered with the other changes. */
export function AddLink({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const { add } = useDraft();
  const list = useId();
  const [typed, setTyped] = useState('');
  const [wait, setWait] = useState('0');
  const [counts, setCounts] = useState<'finish' | 'start'>('finish');
  const [tried, setTried] = useState(false);
  const texts = words.task;
  const found = findTask(state.work, typed);
  const minutes = /^-?\d{1,5}$/.test(wait.trim()) ? Number(wait) : null;

  function gather(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (!found || found.id === task.id || minutes === null) return;
    add({ kind: 'link-add', link: { from: found.id, to: task.id, counts, wait: minutes } });
    setTyped('');
    setWait('0');
    setTried(false);
  }

  return (
    <details className="quiet">
      <summary>{texts.addAfter}</summary>
      <form className="stack" onSubmit={gather} noValidate>
        <Field
          label={texts.addAfter}
          hint={texts.addAfterHint}
          fault={tried && (!found || found.id === task.id) ? texts.addAfterUnknown : undefined}
        >
          {(ties) => (
            <input
              {...ties}
              list={list}
              autoComplete="off"
              value={typed}
              onChange={(event) => setTyped(event.target.value)}
            />
          )}
        </Field>
        <datalist id={list}>
          {state.work.tasks.map(({ id, number, name }) => (
            <option key={id} value={`${number} ${name}`} />
          ))}
        </datalist>
        <div className="two-fields">
          <Field label={texts.countsFrom}>
            {(ties) => (
              <select
                {...ties}
                value={counts}
                onChange={(event) => setCounts(event.target.value === 'start' ? 'start' : 'finish')}
              >
                <option value="finish">{texts.countsFinish}</option>
                <option value="start">{texts.countsStart}</option>
              </select>
            )}
          </Field>
          <Field
            label={texts.waitMinutes}
            hint={texts.waitHint}
            fault={tried && minutes === null ? texts.waitFault : undefined}
          >
            {(ties) => (
              <input
                {...ties}
                inputMode="text"
                autoComplete="off"
                value={wait}
                onChange={(event) => setWait(event.target.value)}
              />
            )}
          </Field>
        </div>
        <p>
          <Button type="submit">{texts.addChange}</Button>
        </p>
      </form>
    </details>
  );
}
