import { orderIndex } from '#domain/progress/orderIndex.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { PageLink } from '../../../parts/PageLink.tsx';
import { words } from '../../../words/words.ts';
import { Findings } from '../../inspector/Findings.tsx';
import { useLeader } from '../useLeader.ts';
import { EditFixed } from './EditFixed.tsx';
import { EditLinks } from './EditLinks.tsx';
import { EditMinutes } from './EditMinutes.tsx';
import { KeepOffPanel } from './KeepOffPanel.tsx';
import { ReopenForm } from './ReopenForm.tsx';
import { SettlePanel } from './SettlePanel.tsx';
import { TaskFacts } from './TaskFacts.tsx';
import { TellForCrew } from './TellForCrew.tsx';
import { ToldList } from './ToldList.tsx';

/** One task: how it stands and why, what can be told or asked of it, and what can be changed. */
export function TaskPage({ id }: { readonly id: string }) {
  const { state, build, secret } = useBuild();
  const { to } = useLeader();
  const task = orderIndex(state.work).task.get(id);
  const standing = state.tasks[id];
  const said = words.task;
  const back = (
    <p className="no-print">
      <PageLink to={to('work')}>{said.back}</PageLink>
    </p>
  );
  if (!task || !standing) {
    return (
      <>
        {back}
        <h1>{said.unknown}</h1>
      </>
    );
  }
  return (
    <article className="task-page">
      {back}
      <TaskFacts task={task} standing={standing} />
      <div className="task-board">
        <div className="stack-wide">
          {standing.disputed ? <SettlePanel task={task} /> : null}
          {task.keepOff && standing.status !== 'done' ? <KeepOffPanel task={task} /> : null}
          {task.hold ? (
            <p>
              {said.holdTell}{' '}
              <PageLink to={{ page: 'inspector', build, secret }}>{said.toInspector}</PageLink>
            </p>
          ) : (
            <TellForCrew task={task} />
          )}
          {standing.status === 'done' ? <ReopenForm task={task} /> : null}
          {task.hold ? <Findings task={task} /> : null}
          <ToldList task={task} standing={standing} />
        </div>
        <section className="stack-wide" aria-label={said.edit}>
          <h2>{said.edit}</h2>
          {standing.status === 'done' ? (
            <p className="second">{said.doneNoEdit}</p>
          ) : (
            <>
              <p className="second">{said.editMore}</p>
              <EditMinutes task={task} />
              {standing.status === 'to-come' ? <EditFixed task={task} /> : null}
            </>
          )}
          <EditLinks task={task} open={standing.status !== 'done'} />
        </section>
      </div>
    </article>
  );
}
