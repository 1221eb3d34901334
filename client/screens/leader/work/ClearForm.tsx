import { type FormEvent, useState } from 'react';
import type { Task } from '#domain/tasks/task.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import type { Say } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';

type Props = {
  readonly task: Task;
  readonly bank: 'near' | 'far';
  readonly say: Say['say'];
  readonly busy: boolean;
};

/** A named person on a bank saw the zones empty and counted heads. */
export function ClearForm({ task, bank, say, busy }: Props) {
  const [name, setName] = useState('');
  const [people, setPeople] = useState('');
  const [tried, setTried] = useState(false);
  const texts = words.keepOff;
  const whole = name.trim() !== '' && /^\d{1,3}$/.test(people.trim());

  function tell(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (!whole) return;
    void say('tell-clear', { task: task.id, bank, name: name.trim(), people: Number(people) });
  }

  return (
    <form className="row beside" onSubmit={tell} noValidate>
      <Field label={texts.clearName(bank)} fault={tried && !whole ? texts.clearFault : undefined}>
        {(ties) => (
          <input
            {...ties}
            autoComplete="off"
            maxLength={60}
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
        )}
      </Field>
      <Field label={texts.clearPeople(bank)}>
        {(ties) => (
          <input
            {...ties}
            inputMode="numeric"
            autoComplete="off"
            value={people}
            onChange={(event) => setPeople(event.target.value)}
          />
        )}
      </Field>
      <Button type="submit" disabled={busy}>
        {texts.tellClear(bank)}
      </Button>
    </form>
  );
}
