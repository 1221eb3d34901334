import { crewNow } from '#domain/progress/views/crewNow.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { crewStrength } from '../../../parts/crewStrength.ts';
import { JobLine } from '../../../parts/JobLine.tsx';
import { iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useLeader } from '../useLeader.ts';

/** Each crew: how strong it is, what it is at, what it can start, or what its next work waits for. */
export function RunningBuild() {
  const { state, now } = useBuild();
  const { toTask } = useLeader();
  const seen = iso(Math.floor(now / 15_000) * 15_000);
  return (
    <section className="stack" aria-label={words.leader.running}>
      <h2>{words.leader.running}</h2>
      <ul className="crews-now">
        {state.work.crews.map((crew) => {
          const jobs = crewNow(state, crew.id, seen);
          const waiting = jobs.ready.length > 0 ? jobs.ready : jobs.next.slice(0, 1);
          const shown = [...jobs.now, ...waiting];
          const { fit, planned } = crewStrength(state, crew);
          return (
            <li key={crew.id}>
              <h3>
                {crew.name} <span className="second small">{words.job.fit(fit, planned)}</span>
              </h3>
              <ul className="stack-tight">
                {shown.map((job) => (
                  <JobLine key={job.task} job={job} to={toTask(job.task)} />
                ))}
                {shown.length === 0 ? <li className="second">{words.job.none}</li> : null}
              </ul>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
