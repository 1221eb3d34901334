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

/** What must be so, in the order in which it comes about. */
const groups = [
  ['work', ['halt', 'order', 'hold']],
  ['zones', ['zone']],
  ['heads', ['off']],
  ['clear', ['clear']],
] as const satisfies readonly (readonly [string, readonly KeepOffCondition['kind'][]])[];

/** Work that is not done yet is named this far; the rest is one press away. */
const named = 4;

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
    <section className="keep-off stack-wide" aria-label={texts.title}>
      <div>
        <h2>{texts.title}</h2>
        <p>
          <strong>{texts.metCount(met, conditions.length)}</strong> {texts.more}
        </p>
      </div>
      {groups.map(([group, kinds]) => {
        const some = conditions.filter(({ kind }) => kinds.some((one) => one === kind));
        return some.length === 0 ? null : (
          <ConditionGroup
            key={group}
            title={texts.groups[group]}
            conditions={some}
            {...{ task, say, busy }}
          />
        );
      })}
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

type MeetProps = { readonly task: Task; readonly say: Say['say']; readonly busy: boolean };

type GroupProps = MeetProps & {
  readonly title: string;
  readonly conditions: readonly KeepOffCondition[];
};

function ConditionGroup({ title, conditions, ...meet }: GroupProps) {
  const open = conditions.filter((one) => !one.met);
  const met = conditions.filter((one) => one.met);
  // Head counts and banks are told right here, so all of them stand in sight.
  const shown = open.some(({ kind }) => kind === 'order') ? open.slice(0, named) : open;
  const rest = [...open.slice(shown.length), ...met];
  const texts = words.keepOff;
  return (
    <section aria-label={title}>
      <h3>
        {title}: {texts.metCount(met.length, conditions.length)}
      </h3>
      <ul>
        {shown.map((condition) => (
          <Condition key={`${condition.kind} ${condition.of}`} condition={condition} {...meet} />
        ))}
      </ul>
      {rest.length > 0 ? (
        <details className="quiet">
          <summary>{texts.rest(open.length - shown.length, met.length)}</summary>
          <ul>
            {rest.map((condition) => (
              <Condition
                key={`${condition.kind} ${condition.of}`}
                condition={condition}
                {...meet}
              />
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  );
}

function Condition({ condition, ...meet }: MeetProps & { readonly condition: KeepOffCondition }) {
  const texts = words.keepOff;
  return (
    <li className="condition">
      <span className={condition.met ? 'second' : 'warn'}>
        {condition.met ? texts.met : texts.open}
      </span>
      <div className="condition-body">
        <p>{condition.sentence}</p>
        <Meet condition={condition} {...meet} />
      </div>
    </li>
  );
}

/** Head counts and "seen clear" can be told right here; the other conditions are met by work. */
function Meet({ condition, ...meet }: MeetProps & { readonly condition: KeepOffCondition }) {
  if (condition.met) return null;
  if (condition.kind === 'off') return <OffForm crew={condition.of} {...meet} />;
  if (condition.kind === 'clear') {
    return <ClearForm bank={condition.of === 'far' ? 'far' : 'near'} {...meet} />;
  }
  return null;
}
