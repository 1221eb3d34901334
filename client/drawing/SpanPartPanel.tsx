import { useEffect, useRef } from 'react';
import type { Span } from '#domain/progress/span.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';
import { Button } from '../parts/Button.tsx';
import { HoldMark } from '../parts/HoldMark.tsx';
import { TaskMark } from '../parts/TaskMark.tsx';
import { atMinute, clock } from '../words/units.ts';
import { words } from '../words/words.ts';
import { type SpanPart, samePart, tasksOfPart } from './spanParts.ts';
import { partName } from './spanWords.ts';

type Props = {
  readonly state: BuildState;
  readonly span: Span;
  readonly part: SpanPart;
  readonly parts: readonly SpanPart[];
  readonly onPart: (part: SpanPart | null) => void;
  readonly onTask?: (task: string) => void;
};

/** The tasks of the part that was touched, and the way to the parts beside it. */
export function SpanPartPanel({ state, span, part, parts, onPart, onTask }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const at = parts.findIndex((one) => samePart(one, part));
  const before = parts[at - 1];
  const next = parts[at + 1];
  const tasks = tasksOfPart(state, span, part);
  const said = words.span.parts;
  const name = partName(part);

  useEffect(() => {
    if (name) heading.current?.focus();
  }, [name]);

  return (
    <div className="part-panel stack">
      <div className="page-line">
        <h3 ref={heading} tabIndex={-1}>
          {name}
        </h3>
        <div className="row">
          <Button disabled={!before} onClick={() => before && onPart(before)}>
            ← {said.previous}
          </Button>
          <Button disabled={!next} onClick={() => next && onPart(next)}>
            {said.next} →
          </Button>
          <Button onClick={() => onPart(null)}>{said.close}</Button>
        </div>
      </div>
      {tasks.length === 0 ? <p className="second">{said.none}</p> : null}
      <ul className="part-tasks">
        {tasks.map((task) => (
          <li key={task.id}>
            {task.hold ? (
              <HoldMark hold={state.tasks[task.id]?.hold ?? 'open'} />
            ) : (
              <TaskMark status={state.tasks[task.id]?.status ?? 'to-come'} />
            )}
            {onTask ? (
              <Button look="plain" onClick={() => onTask(task.id)}>
                {task.name}
              </Button>
            ) : (
              <span>{task.name}</span>
            )}
            <span className="second">{whenOf(state, task)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** "done 13:12", "at work since 13:28", "to come, planned 13:40". */
function whenOf(state: BuildState, task: Task): string {
  const told = state.tasks[task.id];
  const said = words.span.parts;
  const at = (instant: string): string => clock(instant, state.zone);
  if (told?.status === 'done' && told.finishedAt) return said.done(at(told.finishedAt));
  if (told?.status === 'stopped') return said.stopped(told.why ?? '');
  if (told?.status === 'at-work' && told.startedAt) return said.since(at(told.startedAt));
  const planned = state.plan?.tasks.find((one) => one.task === task.id);
  if (!planned) return words.status['to-come'];
  return said.planned(clock(atMinute(state.start, planned.start), state.zone));
}
