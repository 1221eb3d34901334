import { type FormEvent, useState } from 'react';
import { waitingOn } from '#domain/progress/orderIndex.ts';
import { taskLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';

/** Finished work was found wrong: it comes back, with whatever must be undone to get at it. */
export function ReopenForm({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const { said, busy, say } = useSay();
  const [why, setWhy] = useState('');
  const [also, setAlso] = useState<readonly string[]>([]);
  const [tried, setTried] = useState(false);
  const texts = words.task;
  const after = waitingOn(state.work, task.id);
  const resting = state.work.tasks.filter(
    ({ id, hold }) => after.has(id) && !hold && state.tasks[id]?.status === 'done',
  );

  function reopen(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (why.trim() === '') return;
    void say('reopen-task', { task: task.id, why: why.trim(), also: [...also] });
  }

  return (
    <details className="quiet">
      <summary>{texts.reopen}</summary>
      <form className="stack-wide" onSubmit={reopen} noValidate>
        <p>{texts.reopenMore}</p>
        <Field
          label={texts.reopenWhy}
          fault={tried && why.trim() === '' ? texts.reopenWhyMissing : undefined}
        >
          {(ties) => (
            <textarea
              {...ties}
              rows={2}
              maxLength={400}
              value={why}
              onChange={(event) => setWhy(event.target.value)}
            />
          )}
        </Field>
        {resting.length === 0 ? (
          <p className="second">{texts.alsoNone}</p>
        ) : (
          <fieldset className="also">
            <legend>{texts.also}</legend>
            <p className="second small">{texts.alsoHint}</p>
            {resting.map(({ id }) => (
              <label key={id} className="tick">
                <input
                  type="checkbox"
                  checked={also.includes(id)}
                  onChange={(event) =>
                    setAlso(
                      event.target.checked ? [...also, id] : also.filter((other) => other !== id),
                    )
                  }
                />
                {taskLabel(state, id)}
              </label>
            ))}
          </fieldset>
        )}
        <p>
          <Button type="submit" disabled={busy}>
            {texts.reopenGo}
          </Button>
        </p>
        <SaidLine said={said} />
      </form>
    </details>
  );
}
