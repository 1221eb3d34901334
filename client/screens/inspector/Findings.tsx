import type { Inspection } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../data/useBuild.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { againstWords, withUnit } from './measures.ts';

/** What was found at a hold so far, in order: passes, failures and lapses, with the values that were read. */
export function Findings({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const inspections = state.tasks[task.id]?.inspections ?? [];
  if (inspections.length === 0) return null;
  return (
    <div className="stack">
      <p>
        <strong>{words.inspector.history}</strong>
      </p>
      <ol className="stack-tight">
        {inspections.map((inspection) => (
          <li key={inspection.entry}>
            <Found inspection={inspection} task={task} />
          </li>
        ))}
      </ol>
    </div>
  );
}

function Found({ inspection, task }: { readonly inspection: Inspection; readonly task: Task }) {
  const { state } = useBuild();
  const said = words.inspector;
  const { kind, at, name, why, values, ownWork, concession, allowed } = inspection;
  const time = clock(at, state.zone);
  const sentence =
    kind === 'passed'
      ? said.passed(time, name) + (why === '' ? '' : `: ${why}`)
      : kind === 'failed'
        ? `${said.failed(time, why)} (${name})`
        : said.lapsed(time, why);
  return (
    <>
      {sentence}
      {ownWork ? `. ${said.ownWorkWas}` : ''}
      {concession ? (
        <strong className="warn">
          {'. '}
          {said.byConcession(concession.name, concession.authority, concession.reason)} (
          {againstLimits(task, concession.of, values)})
        </strong>
      ) : null}
      {allowed
        ? `. ${said.allowed(allowed.reason)} (${againstLimits(task, allowed.of, values)})`
        : ''}
      {Object.keys(values).length > 0 ? (
        <div className="second">{valuesWords(task, values)}</div>
      ) : null}
    </>
  );
}

function valuesWords(task: Task, values: Inspection['values']): string {
  return (task.hold?.measures ?? [])
    .flatMap(({ key, name, unit }) => {
      const value = values[key];
      if (value === undefined) return [];
      if (typeof value === 'boolean')
        return [`${name}: ${value ? words.inspector.yes : words.inspector.no}`];
      return [`${name}: ${withUnit(value, unit)}`];
    })
    .join('; ');
}

/** Those measures as read, and what was asked of them: "Wind: 9 m/s, limit at most 12 m/s". */
function againstLimits(task: Task, keys: readonly string[], values: Inspection['values']): string {
  return (task.hold?.measures ?? [])
    .filter(({ key }) => keys.includes(key))
    .map((measure) => {
      const value = values[measure.key];
      const read = typeof value === 'number' ? withUnit(value, measure.unit) : words.inspector.no;
      return words.inspector.readAgainst(measure.name, read, againstWords(measure));
    })
    .join('; ');
}
