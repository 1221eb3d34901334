import type { TaskState, TaskTell } from '#domain/progress/state.ts';
import { crewLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { clock, percent } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { Findings } from '../../inspector/Findings.tsx';

type Props = { readonly task: Task; readonly standing: TaskState };

/** Everything told of a task, with earlier attempts and inspections; the leader may withdraw any tell. */
export function ToldList({ task, standing }: Props) {
  const { said, busy, say } = useSay();
  const texts = words.task;
  const { tells, earlier, inspections } = standing;
  const nothing = tells.length === 0 && earlier.length === 0 && inspections.length === 0;
  return (
    <section className="stack" aria-label={texts.told}>
      <h2>{texts.told}</h2>
      {nothing ? <p>{texts.toldNone}</p> : null}
      {earlier.map((one) => (
        <div key={one.attempt}>
          <h3>{texts.earlier(one.attempt)}</h3>
          <ol>
            {one.tells.map((tell) => (
              <li key={tell.entry} className="told">
                <TellText tell={tell} />
              </li>
            ))}
          </ol>
        </div>
      ))}
      <ol>
        {tells.map((tell) => (
          <li key={`${tell.entry} ${tell.kind}`} className="told">
            <TellText tell={tell} />
            {tell.kind === 'settled' || tell.kind === 'halted' ? null : (
              <Button
                look="plain"
                disabled={busy}
                aria-label={texts.withdrawOne(tell.entry)}
                onClick={() =>
                  void say('withdraw', { entry: tell.entry, why: texts.withdrawDefault })
                }
              >
                {texts.withdraw}
              </Button>
            )}
          </li>
        ))}
      </ol>
      <Findings task={task} />
      <SaidLine said={said} />
    </section>
  );
}

function TellText({ tell }: { readonly tell: TaskTell }) {
  const { state } = useBuild();
  const texts = words.task;
  const { kind, crew, at, by, saidBy, why, part, settled, entry } = tell;
  const what = [
    crew === '' ? '' : crewLabel(state, crew),
    texts.tellKinds[kind],
    part === undefined ? '' : percent(part),
    settled ?? '',
  ].filter(Boolean);
  return (
    <span>
      <span className="entry-number">{entry}</span> <b>{clock(at, state.zone)}</b> {what.join(' ')}
      {why ? `: ${why}` : ''}{' '}
      <span className="second small">
        {saidBy ? words.record.saidBy(saidBy, by.name) : words.record.by(by.name)}
      </span>
    </span>
  );
}
