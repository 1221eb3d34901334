import { plannedTask } from '#domain/progress/plannedCrews.ts';
import type { TaskState } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { HoldMark } from '../../../parts/HoldMark.tsx';
import { PageLink } from '../../../parts/PageLink.tsx';
import { TaskMark } from '../../../parts/TaskMark.tsx';
import { atMinute, clock } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { minutesShort } from '../draft/changeWords.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { useLeader } from '../useLeader.ts';
import { crewsWords } from './crewsWords.ts';

/** One task of the list: mark, number, name, how it stands, who does it, how long it takes. */
export function TaskRow({ task }: { readonly task: Task }) {
  const { state } = useBuild();
  const { toTask } = useLeader();
  const { changes } = useDraft();
  const standing = state.tasks[task.id];
  const said = words.work;
  const changed = changes.some((change) => change.kind === 'task' && change.task === task.id);
  const kinds = [...(task.keepOff ? [said.keepOff] : []), ...(task.hold ? [said.hold] : [])];
  return (
    <li className="task-row">
      {task.hold ? (
        <HoldMark hold={standing?.hold ?? 'open'} />
      ) : (
        <TaskMark status={standing?.status ?? 'to-come'} />
      )}
      <span className="task-row-name">
        <b>{task.number}</b> <PageLink to={toTask(task.id)}>{task.name}</PageLink>
        {kinds.length > 0 ? <span className="second"> ({kinds.join(', ')})</span> : null}
      </span>
      <span className={standing?.status === 'stopped' ? 'warn' : ''}>
        {standing ? <Stands task={task} standing={standing} /> : null}
      </span>
      <span className="second">{crewsWords(state, task)}</span>
      <span className="second task-row-minutes">
        {said.minutes(minutesShort(task.minutes))}
        {changed ? <strong> {words.leader.draft.changed}</strong> : null}
      </span>
    </li>
  );
}

function Stands({ task, standing }: { readonly task: Task; readonly standing: TaskState }) {
  const { state } = useBuild();
  const said = words.work;
  const status =
    task.hold && standing.hold !== 'open'
      ? words.hold[standing.hold]
      : words.status[standing.status];
  const planned = plannedTask(state.plan, task.id);
  const at = (instant: string): string => clock(instant, state.zone);
  const when =
    standing.status === 'done' && standing.finishedAt
      ? at(standing.finishedAt)
      : standing.status === 'to-come' && planned
        ? said.planned(clock(atMinute(state.start, planned.start), state.zone))
        : standing.startedAt
          ? said.started(at(standing.startedAt))
          : '';
  const more = [
    when,
    ...(standing.attempt > 1 ? [said.attempt(standing.attempt)] : []),
    ...(standing.status === 'stopped' && standing.why ? [standing.why] : []),
  ].filter(Boolean);
  return (
    <>
      {status}
      {more.length > 0 ? `, ${more.join(', ')}` : ''}
    </>
  );
}
