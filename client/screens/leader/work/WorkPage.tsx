import { useState } from 'react';
import { isAtWork } from '#domain/progress/standing.ts';
import type { TaskState } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Field } from '../../../parts/Field.tsx';
import { iso } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { type Filter, filterTasks } from './filterTasks.ts';
import { TaskRow } from './TaskRow.tsx';

/** The whole order of work by phase: what stands how, who does it, how long it takes. */
export function WorkPage() {
  const { state, now } = useBuild();
  const [find, setFind] = useState('');
  const [filter, setFilter] = useState<Filter>('open');
  const said = words.work;
  const tasks = filterTasks(state, filter, find, iso(Math.floor(now / 15_000) * 15_000));
  const phases = [...byPhase(tasks)];
  const sought = find.trim() !== '' || filter !== 'open';

  if (state.work.tasks.length === 0) {
    return (
      <>
        <h1>{said.title}</h1>
        <p className="lead">{said.empty}</p>
        <p className="reading">{words.leader.noWorkMore}</p>
      </>
    );
  }
  return (
    <>
      <h1>{said.title}</h1>
      <search className="work-find">
        <Field label={said.find} hint={said.findHint}>
          {(ties) => (
            <input
              {...ties}
              type="search"
              autoComplete="off"
              value={find}
              onChange={(event) => setFind(event.target.value)}
            />
          )}
        </Field>
        <Field label={said.show}>
          {(ties) => (
            <select
              {...ties}
              value={filter}
              onChange={(event) => setFilter(event.target.value as Filter)}
            >
              {Object.entries(said.filters).map(([value, label]) => (
                <option key={value} value={value}>
                  {label}
                </option>
              ))}
            </select>
          )}
        </Field>
        <p role="status">{said.count(tasks.length, state.work.tasks.length)}</p>
      </search>
      {tasks.length === 0 ? <p>{said.none}</p> : <p className="second small">{said.figures}</p>}
      {phases.map(([phase, some], place) => (
        <Phase
          key={`${phase} ${sought}`}
          phase={phase}
          tasks={some}
          // What was asked for is shown; else what is at work, or comes first.
          open={sought || place === 0 || some.some(({ id }) => isUnderWay(state.tasks[id]))}
        />
      ))}
    </>
  );
}

function isUnderWay(standing: TaskState | undefined): boolean {
  return standing !== undefined && (isAtWork(standing) || standing.status === 'stopped');
}

type PhaseProps = {
  readonly phase: string;
  readonly tasks: readonly Task[];
  readonly open: boolean;
};

function Phase({ phase, tasks, open }: PhaseProps) {
  const { state } = useBuild();
  const all = state.work.tasks.filter((task) => task.phase === phase);
  const done = all.filter(({ id }) => state.tasks[id]?.status === 'done').length;
  const said = words.work;
  return (
    <details className="phase" open={open}>
      <summary>
        <h2>{said.phase(phase === '' ? said.noPhase : phase, done, all.length)}</h2>
      </summary>
      <ul>
        {tasks.map((task) => (
          <TaskRow key={task.id} task={task} />
        ))}
      </ul>
    </details>
  );
}

/** Phases in the order of work; Map.groupBy is not in every browser yet. */
function byPhase(tasks: readonly Task[]): Map<string, Task[]> {
  const phases = new Map<string, Task[]>();
  for (const task of tasks) {
    const some = phases.get(task.phase);
    if (some) some.push(task);
    else phases.set(task.phase, [task]);
  }
  return phases;
}
