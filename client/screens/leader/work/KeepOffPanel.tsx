import { isAtWork } from '#domain/progress/standing.ts';
import { type KeepOffCondition, keepOffCheck } from '#domain/progress/views/keepOff.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { type Say, useSay } from '../../../parts/useSay.ts';
import { iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { ClearForm } from './ClearForm.tsx';
import { OffForm } from './OffForm.tsx';

/** Every condition of a keep-off task in words, what can be told to meet it, and the ask to start. */
export function KeepOffPanel({ task }: { readonly task: Task }) {
  const { state, now } = useBuild();
  const { said, busy, say } = useSay();
  const texts = words.keepOff;
  const standing = state.tasks[task.id];
  if (standing && isAtWork(standing)) return <p className="notice strong">{texts.running}</p>;
  const conditions = keepOffCheck(state, task.id, iso(now));
  const met = conditions.filter((one) => one.met).length;
  return (
    <section className="keep-off stack" aria-label={texts.title}>
      <h2>{texts.title}</h2>
      <p>
        <strong>{texts.metCount(met, conditions.length)}</strong> {texts.more}
      </p>
      <ul>
        {conditions.map((condition) => (
          <li key={`${condition.kind} ${condition.of}`} className="condition">
            <span className={condition.met ? 'second' : 'warn'}>
              {condition.met ? texts.met : texts.open}
            </span>
            <div>
              <p>{condition.sentence}</p>
              <Meet condition={condition} task={task} say={say} busy={busy} />
            </div>
          </li>
        ))}
      </ul>
      <SaidLine said={said} />
      <p>
        <Button
          look={met === conditions.length ? 'solid' : 'line'}
          disabled={busy}
          onClick={() => void say('start-keep-off', { task: task.id })}
        >
          {texts.start(task.name)}
        </Button>
      </p>
    </section>
  );
}

type MeetProps = {
  readonly condition: KeepOffCondition;
  readonly task: Task;
  readonly say: Say['say'];
  readonly busy: boolean;
};

/** Head counts and "seen clear" can be told right here; the other conditions are met by work. */
function Meet({ condition, task, say, busy }: MeetProps) {
  if (condition.met) return null;
  if (condition.kind === 'off') {
    return <OffForm task={task} crew={condition.of} say={say} busy={busy} />;
  }
  if (condition.kind === 'clear') {
    const bank = condition.of === 'far' ? 'far' : 'near';
    return <ClearForm task={task} bank={bank} say={say} busy={busy} />;
  }
  return null;
}
