import { orderIndex } from '#domain/progress/orderIndex.ts';
import type { Job } from '#domain/progress/views/crewNow.ts';
import type { Place } from '../data/place.ts';
import { useBuild } from '../data/useBuild.ts';
import { clock, minutes, span } from '../words/units.ts';
import { words } from '../words/words.ts';
import { HoldMark } from './HoldMark.tsx';
import { PageLink } from './PageLink.tsx';
import { TaskMark } from './TaskMark.tsx';

/** One job of a crew: its mark, number and name (leading `to` somewhere), and since when it is under way, why it stands, or what it waits for. */
export function JobLine({ job, to }: { readonly job: Job; readonly to?: Place }) {
  const { state } = useBuild();
  return (
    <li className="task-line">
      {job.hold ? (
        <HoldMark hold={state.tasks[job.task]?.hold ?? 'open'} />
      ) : (
        <TaskMark status={job.status} />
      )}
      <span>
        <b>{job.number}</b> {to ? <PageLink to={to}>{job.name}</PageLink> : job.name}{' '}
        <JobState job={job} />
      </span>
    </li>
  );
}

function JobState({ job }: { readonly job: Job }) {
  const { state, now } = useBuild();
  const task = orderIndex(state.work).task.get(job.task);
  if (job.status === 'stopped') {
    return <span className="warn">{words.job.stopped(job.why?.trim() ?? '')}</span>;
  }
  if (job.hold) return <span className="second">{words.job.hold}</span>;
  if (job.status === 'to-come') {
    const { ready, waitsFor } = job.readiness;
    if (ready) return <span className="second">{words.job.ready}</span>;
    return <span className="second">{words.job.waits(waitsFor[0]?.sentence ?? '')}</span>;
  }
  const since =
    job.startedAt === null
      ? ''
      : words.job.since(clock(job.startedAt, state.zone), span(now - Date.parse(job.startedAt)));
  const usually = task ? words.job.usually(minutes(task.minutes.likely)) : '';
  return <span className="second">{[since, usually].filter(Boolean).join(', ')}</span>;
}
