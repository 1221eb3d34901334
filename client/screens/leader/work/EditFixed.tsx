import { type FormEvent, useState } from 'react';
import { crewLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { readSiteTime, writeSiteTime } from '../../../parts/siteTime.ts';
import { TimeField } from '../../../parts/TimeField.tsx';
import { atMinute, iso, minuteOf } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';

/** Fixes when a task starts, for the next plan: no plan does otherwise. */
export function EditFixed({ task }: { readonly task: Task }) {
  const { state, now } = useBuild();
  const { add, work } = useDraft();
  const fixed = (work.tasks.find(({ id }) => id === task.id) ?? task).fixed;
  const [time, setTime] = useState(() =>
    fixed?.start === undefined
      ? ''
      : writeSiteTime(atMinute(state.start, fixed.start), state.zone, state.start),
  );
  const [tried, setTried] = useState(false);
  const said = words.task;
  const at = readSiteTime(time, state.zone, iso(now));
  const start = at ? minuteOf(state.start, at) : null;
  const fault = tried && (start === null || start < 0) ? said.fixFault : undefined;

  function gather(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (start !== null && start >= 0) {
      add({ kind: 'task', task: task.id, fixed: { ...fixed, start } });
    }
  }

  return (
    <form className="stack" onSubmit={gather} noValidate aria-label={said.fix}>
      <h3>{said.fix}</h3>
      {fixed?.crews ? (
        <p>{said.fixedCrews(fixed.crews.map((crew) => crewLabel(state, crew)).join(', '))}</p>
      ) : null}
      <div className="row beside">
        <TimeField
          label={said.fixStart}
          value={time}
          zone={state.zone}
          from={iso(now)}
          fault={fault}
          onChange={setTime}
        />
        <Button type="submit">{said.addChange}</Button>
        {fixed ? (
          <Button onClick={() => add({ kind: 'task', task: task.id, fixed: null })}>
            {said.fixFree}
          </Button>
        ) : null}
      </div>
    </form>
  );
}
