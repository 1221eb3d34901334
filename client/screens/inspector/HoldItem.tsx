import { orderIndex } from '#domain/progress/orderIndex.ts';
import type { HoldNow } from '#domain/progress/views/holds.ts';
import type { Readiness } from '#domain/progress/views/readiness.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../data/useBuild.ts';
import { HoldMark } from '../../parts/HoldMark.tsx';
import type { Say } from '../../parts/useSay.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { Findings } from './Findings.tsx';
import { InspectionForm } from './InspectionForm.tsx';
import { againstWords } from './measures.ts';

type Props = {
  readonly hold: HoldNow;
  readonly readiness: Readiness;
  /** The next of those that are not ready: what it waits for stands in sight. */
  readonly next: boolean;
  readonly say: Say['say'];
  readonly busy: boolean;
};

/** How many of the things a hold waits for are named before the rest is only counted. */
const named = 4;

/** One hold point: its box and state; the form when it is ready, else what it waits for and what was found before. */
export function HoldItem({ hold, readiness, next, say, busy }: Props) {
  const { state } = useBuild();
  const said = words.inspector;
  const task = orderIndex(state.work).task.get(hold.task);
  if (!task) return null;
  const lapsesOn = task.hold?.lapsesOn ?? [];
  const heading = (
    <>
      <HoldMark hold={hold.status} />
      <span className="hold-name">
        <b>{hold.number}</b> {hold.name}
      </span>
      <HoldState hold={hold} ready={readiness.ready} />
    </>
  );
  const more = (
    <>
      {readiness.waitsFor.length > 0 ? (
        <div>
          <p>{said.waitsFor}</p>
          <ul className="listed">
            {readiness.waitsFor.slice(0, named).map(({ sentence }) => (
              <li key={sentence}>{sentence}</li>
            ))}
            {readiness.waitsFor.length > named ? (
              <li>{said.moreWaits(readiness.waitsFor.length - named)}</li>
            ) : null}
          </ul>
        </div>
      ) : null}
      {readiness.ready ? null : <ToMeasure task={task} />}
      {lapsesOn.length > 0 ? (
        <p className="second">{said.lapsesOn(lapsesOn.map((cause) => said.causes[cause]))}</p>
      ) : null}
      <Findings task={task} />
    </>
  );
  if (readiness.ready) {
    return (
      <li className="hold-item hold-ready">
        <h2 className="hold-head">{heading}</h2>
        <InspectionForm
          key={`${hold.task} ${state.tasks[hold.task]?.attempt}`}
          {...{ task, say, busy }}
        />
        {more}
      </li>
    );
  }
  return (
    <li className="hold-item">
      <details open={next || hold.status === 'failed' || hold.status === 'lapsed'}>
        <summary className="hold-head">{heading}</summary>
        <div className="stack hold-more">{more}</div>
      </details>
    </li>
  );
}

function HoldState({ hold, ready }: { readonly hold: HoldNow; readonly ready: boolean }) {
  const { state } = useBuild();
  const said = words.inspector;
  const time = hold.at === null ? '' : clock(hold.at, state.zone);
  const why = hold.why ?? '';
  switch (hold.status) {
    case 'passed':
      return (
        <span className="second">
          {said.passed(time, hold.passedBy ?? '')}
          {hold.ownWork ? `, ${said.ownWork}` : ''}
          {hold.concession ? <strong className="warn">, {said.conceded}</strong> : null}
        </span>
      );
    case 'failed':
      return <span className="warn">{said.failed(time, why)}</span>;
    case 'lapsed':
      return <span className="warn">{said.lapsed(time, why)}</span>;
    default:
      return ready ? <strong>{said.ready}</strong> : <span className="second">{said.toCome}</span>;
  }
}

/** What will be measured here, for whoever gets ready for it. */
function ToMeasure({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const measures = task.hold?.measures ?? [];
  if (measures.length === 0 || state.tasks[task.id]?.hold === 'passed') return null;
  return (
    <div>
      <p>{words.inspector.toMeasure}</p>
      <ul className="listed">
        {measures.map((measure) => (
          <li key={measure.key}>
            {measure.name}: {againstWords(measure)}
          </li>
        ))}
      </ul>
    </div>
  );
}
