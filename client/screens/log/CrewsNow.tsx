import { crewNow, type Job } from '#domain/progress/views/crewNow.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { useBuild } from '../../data/useBuild.ts';
import { crewStrength } from '../../parts/crewStrength.ts';
import { JobLine } from '../../parts/JobLine.tsx';
import { words } from '../../words/words.ts';
import { callSigns } from './callSigns.ts';

/** Each crew with the letters it is called by, what it is at and what it can start next. */
export function CrewsNow() {
  const { told: state } = useBuild();
  const signs = callSigns(state.work);
  return (
    <section className="stack" aria-label={words.log.crews}>
      <div className="page-line">
        <h2>{words.log.crews}</h2>
        <p className="second small">{words.log.crewsMore}</p>
      </div>
      <ul>
        {state.work.crews.map((crew) => (
          <CrewNow key={crew.id} crew={crew} sign={signs.get(crew.id) ?? ''} />
        ))}
      </ul>
    </section>
  );
}

function CrewNow({ crew, sign }: { readonly crew: Crew; readonly sign: string }) {
  const { told: state, now } = useBuild();
  const jobs = crewNow(state, crew.id, new Date(now).toISOString());
  const shown: readonly Job[] = [
    ...jobs.now,
    ...(jobs.ready.length > 0 ? jobs.ready : jobs.next.slice(0, 1)),
  ];
  const { fit, planned } = crewStrength(state, crew);
  return (
    <li className="crew-now">
      <h3>
        <b>{crew.name.slice(0, sign.length)}</b>
        {crew.name.slice(sign.length)}{' '}
        <span className="second small">{words.job.fit(fit, planned)}</span>
      </h3>
      <ul className="stack-tight">
        {shown.map((job) => (
          <JobLine key={job.task} job={job} />
        ))}
        {shown.length === 0 ? <li className="second">{words.job.none}</li> : null}
      </ul>
    </li>
  );
}
