import { plannedTask } from '#domain/progress/plannedCrews.ts';
import type { TaskState } from '#domain/progress/state.ts';
import { readiness } from '#domain/progress/views/readiness.ts';
import { zoneLabel } from '#domain/progress/words.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { HoldMark } from '../../../parts/HoldMark.tsx';
import { TaskMark } from '../../../parts/TaskMark.tsx';
import { loadLabel } from '../../../words/entryWords.ts';
import { atMinute, clock, iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { minutesShort } from '../draft/changeWords.ts';
import { needsWords } from './crewsWords.ts';

type Props = { readonly task: Task; readonly standing: TaskState };

/** What is known of a task: how it stands, what it waits for, when it is planned and why not earlier. */
export function TaskFacts({ task, standing }: Props) {
  const { state, now } = useBuild();
  const said = words.task;
  const planned = plannedTask(state.plan, task.id);
  const waiting = readiness(state, task.id, iso(now));
  const time = (minute: number): string => clock(atMinute(state.start, minute), state.zone);
  const facts: readonly (readonly [string, string])[] = [
    [said.people, needsWords(state, task)],
    [said.minutes, `${minutesShort(task.minutes)} (${said.minutesHint})`],
    [said.place, placeWords(task, (zone) => zoneLabel(state, zone))],
    [said.stores, task.loads.map((load) => loadLabel(state, load)).join(', ')],
    [said.tools, task.tools.join(', ')],
    [said.holds, equipmentWords(task, state.work)],
    [said.light, task.daylight ? said.daylight : ''],
    [said.fixed, task.fixed?.start === undefined ? '' : said.fixedStart(time(task.fixed.start))],
    [said.planned, planned ? said.plannedTimes(time(planned.start), time(planned.finish)) : ''],
  ];
  return (
    <header className="task-facts stack">
      <h1>
        {task.hold ? <HoldMark hold={standing.hold} /> : <TaskMark status={standing.status} />}{' '}
        {task.number} {task.name}
      </h1>
      <p className="lead">
        {statusWords(task, standing)}
        {standing.startedAt ? `, ${words.work.started(clock(standing.startedAt, state.zone))}` : ''}
        {standing.finishedAt
          ? `, ${words.work.finished(clock(standing.finishedAt, state.zone))}`
          : ''}
        {standing.attempt > 1 ? `, ${words.work.attempt(standing.attempt)}` : ''}
        {standing.why ? <span className="warn">: {standing.why}</span> : null}
      </p>
      {planned && standing.status === 'to-come' && standing.attempt === 1 ? (
        <p>{said.reason(reasonSentence(state.work, planned.reason))}</p>
      ) : null}
      {waiting.ready && !task.keepOff ? <p>{said.canStart}</p> : null}
      {waiting.waitsFor.length > 0 && !task.keepOff ? (
        <div>
          <p>{said.waitsFor}</p>
          <ul className="listed">
            {waiting.waitsFor.map(({ sentence }) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      ) : null}
      <dl className="facts">
        {facts
          .filter(([, value]) => value !== '')
          .map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
      </dl>
      {task.cautions.length > 0 ? (
        <div className="notice stack">
          <h2>{said.cautions}</h2>
          <ul>
            {task.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </div>
      ) : null}
    </header>
  );
}

function statusWords(task: Task, { hold, status }: TaskState): string {
  return task.hold ? words.hold[hold] : words.status[status];
}

function equipmentWords({ equipment = [] }: Task, work: Work): string {
  const nameOf = (id: string) => work.equipment?.find((one) => one.id === id)?.name ?? id;
  return equipment.map(({ id, count }) => `${count} ${nameOf(id)}`).join(', ');
}

function placeWords({ place, zones }: Task, zoneName: (zone: string) => string): string {
  const said = words.task;
  const parts = [
    // "Bay" says nothing beside the number of the bay.
    ...(place && place.part !== 'bay' ? [place.part] : []),
    ...(place?.bays && place.bays.length > 0 ? [said.bays(place.bays.join(', '))] : []),
    ...(place?.side ? [said.sides[place.side]] : []),
    ...(place?.bank ? [said.banks[place.bank]] : []),
    ...zones.map(zoneName),
  ];
  return [...new Set(parts)].join(', ');
}
