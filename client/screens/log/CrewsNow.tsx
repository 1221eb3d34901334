import type { Task } from '#domain/tasks/task.ts';
import type { Crew } from '#domain/tasks/work.ts';
import { useBuild } from '../../data/useBuild.ts';
import { TaskMark } from '../../parts/TaskMark.tsx';
import { clock, minutes, span } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { callSigns } from './callSigns.ts';
import { mayStart, workOfCrew } from './likely.ts';

/** Each crew with the letters it is called by, what it is at and what it can start next. */
export function CrewsNow() {
  const { state } = useBuild();
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
  const { state, now } = useBuild();
  const { atWork, next } = workOfCrew(state, crew.id, 1);
  const heavy = crew.name.slice(0, sign.length);
  return (
    <li className="crew-now">
      <h3>
        <b>{heavy}</b>
        <span className="crew-now-rest">{crew.name.slice(sign.length)}</span>{' '}
        <span className="second small">
          {words.log.fit(state.crews[crew.id]?.fit ?? crew.people, crew.people)}
        </span>
      </h3>
      <ul className="stack-tight">
        {atWork.map((task) => (
          <AtWork key={task.id} task={task} crew={crew.id} now={now} />
        ))}
        {next.map((task) => (
          <li key={task.id} className="task-line">
            <TaskMark status="to-come" />
            <span>
              <span className="second">
                {mayStart(state, task.id) ? words.log.thenCan : words.log.thenWaits}
              </span>{' '}
              <b>{task.number}</b> {task.name}
            </span>
          </li>
        ))}
        {atWork.length === 0 && next.length === 0 ? (
          <li className="second">{words.log.noNext}</li>
        ) : null}
      </ul>
    </li>
  );
}

type AtWorkProps = { readonly task: Task; readonly crew: string; readonly now: number };

function AtWork({ task, crew, now }: AtWorkProps) {
  const { state } = useBuild();
  const standing = state.tasks[task.id];
  const share = standing?.shares.find((one) => one.crew === crew) ?? standing;
  const startedAt = share?.startedAt ?? null;
  const status = share?.status ?? 'at-work';
  return (
    <li className="task-line">
      <TaskMark status={status} />
      <span>
        <b>{task.number}</b> {task.name}{' '}
        {status === 'stopped' ? (
          <span className="warn">{words.log.stopped(share?.why ?? '')}</span>
        ) : (
          <span className="second">
            {startedAt === null
              ? ''
              : `${words.log.since(clock(startedAt, state.zone), span(now - Date.parse(startedAt)))}, `}
            {words.log.usually(minutes(task.minutes.likely))}
          </span>
        )}
      </span>
    </li>
  );
}
