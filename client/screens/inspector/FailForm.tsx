import { type FormEvent, useState } from 'react';
import type { Task } from '#domain/tasks/task.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { words } from '../../words/words.ts';
import { RedoList } from './RedoList.tsx';

type Props = {
  readonly task: Task;
  readonly busy: boolean;
  /** Called with the reason, once there is one. */
  readonly onFail: (why: string) => void;
};

/** Why a hold fails, and what that brings back, before it is said. */
export function FailForm({ task, busy, onFail }: Props) {
  const [why, setWhy] = useState('');
  const [tried, setTried] = useState(false);
  const said = words.inspector;

  function fail(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (why.trim() !== '') onFail(why.trim());
  }

  return (
    <form className="notice stack-wide" onSubmit={fail} noValidate>
      <Field
        label={said.why}
        hint={said.whyHint}
        fault={tried && why.trim() === '' ? said.whyMissing : undefined}
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
      <RedoList task={task} />
      <p>
        <Button type="submit" disabled={busy} aria-label={said.failThis(task.name)}>
          {said.fail}
        </Button>
      </p>
    </form>
  );
}
