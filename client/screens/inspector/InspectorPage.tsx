import type { BuildState } from '#domain/progress/state.ts';
import { holdsOf } from '#domain/progress/views/holds.ts';
import { type Readiness, readiness } from '#domain/progress/views/readiness.ts';
import { inWords, taskLabel } from '#domain/progress/words.ts';
import { useBuild } from '../../data/useBuild.ts';
import { BuildHead } from '../../parts/BuildHead.tsx';
import { HaltNotice } from '../../parts/HaltNotice.tsx';
import { PageFrame } from '../../parts/PageFrame.tsx';
import { SaidLine } from '../../parts/SaidLine.tsx';
import { useSay } from '../../parts/useSay.ts';
import { words } from '../../words/words.ts';
import { HoldItem } from './HoldItem.tsx';
import './inspector.css';

/** The inspector's page: hold points in order, the ready ones open to be passed or failed. */
export default function InspectorPage() {
  const { state, now } = useBuild();
  const { said, busy, say } = useSay();
  const seen = new Date(now).toISOString();
  const holds = holdsOf(state).map((hold) => {
    return {
      hold,
      readiness: hold.status === 'passed' ? passedAlready : inspectable(state, hold.task, seen),
    };
  });
  const ready = holds.filter((one) => one.readiness.ready);
  const next = holds.find(({ hold }) => hold.status !== 'passed');
  // The way back is seldom looked at; what comes next stands at the top.
  const open = holds.findIndex(({ hold }) => hold.status !== 'passed');
  const before = holds.slice(0, open < 0 ? holds.length : open);
  const item = (one: (typeof holds)[number]) => (
    <HoldItem
      key={one.hold.task}
      hold={one.hold}
      readiness={one.readiness}
      next={ready.length === 0 && one === next}
      say={say}
      busy={busy}
    />
  );
  const passed = holds.filter(({ hold }) => hold.status === 'passed').length;

  return (
    <PageFrame
      title={words.title(words.pages.inspector, state.name)}
      header={<BuildHead page={words.pages.inspector} />}
      footer={<p className="second small">{words.planningAid}</p>}
      className="inspector-page"
    >
      <HaltNotice>
        <p>{words.inspector.halted}</p>
      </HaltNotice>
      <h1 className="inspector-answer">
        {ready.length > 0
          ? words.inspector.readyNow(inWords(ready.map(({ hold }) => taskLabel(state, hold.task))))
          : next
            ? words.inspector.noneReady(taskLabel(state, next.hold.task))
            : holds.length > 0
              ? words.inspector.allPassed
              : words.inspector.none}
      </h1>
      {holds.length > 0 ? (
        <p className="second">{words.inspector.count(passed, holds.length)}</p>
      ) : (
        <p>{words.inspector.noneMore}</p>
      )}
      <SaidLine said={said} />
      {before.length > 0 ? (
        <details className="quiet">
          <summary>{words.inspector.before(before.length)}</summary>
          <ol className="hold-points">{before.map(item)}</ol>
        </details>
      ) : null}
      <ol className="hold-points">{holds.slice(before.length).map(item)}</ol>
    </PageFrame>
  );
}

const passedAlready = { ready: false, waitsFor: [] } as const;

/** What a hold waits for, but for crew and stores: those are of no concern to whoever inspects it. */
function inspectable(state: BuildState, task: string, now: string): Readiness {
  const { waitsFor } = readiness(state, task, now);
  const left = waitsFor.filter(({ kind }) => kind !== 'crew' && kind !== 'load');
  return { ready: left.length === 0, waitsFor: left };
}
