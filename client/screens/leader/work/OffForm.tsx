import { type FormEvent, useState } from 'react';
import { expectedCrews, peopleFrom } from '#domain/progress/plannedCrews.ts';
import { crewLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import type { Say } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';

type Props = {
  readonly task: Task;
  readonly crew: string;
  readonly say: Say['say'];
  readonly busy: boolean;
};

/** "Off, 7 of 7": the head count of one crew, filled with what it would be if everybody is there. */
export function OffForm({ task, crew, say, busy }: Props) {
  const { state } = useBuild();
  const fit = state.crews[crew]?.fit ?? 0;
  const own = expectedCrews(state.plan, task).named.includes(crew)
    ? peopleFrom(state.plan, task, crew)
    : 0;
  const [off, setOff] = useState(String(Math.max(0, fit - own)));
  const [of, setOf] = useState(String(fit));
  const texts = words.keepOff;
  const name = crewLabel(state, crew);
  const whole = /^\d{1,3}$/.test(off) && /^\d{1,3}$/.test(of);

  function tell(event: FormEvent): void {
    event.preventDefault();
    if (whole) void say('tell-off', { task: task.id, crew, off: Number(off), of: Number(of) });
  }

  return (
    <form className="row count-form" onSubmit={tell}>
      <input
        aria-label={texts.offCount(name)}
        inputMode="numeric"
        value={off}
        onChange={(event) => setOff(event.target.value)}
      />
      <span>{texts.of}</span>
      <input
        aria-label={texts.ofCount(name)}
        inputMode="numeric"
        value={of}
        onChange={(event) => setOf(event.target.value)}
      />
      <Button type="submit" disabled={busy || !whole} aria-label={texts.tellOff(name)}>
        {texts.off}
      </Button>
    </form>
  );
}
