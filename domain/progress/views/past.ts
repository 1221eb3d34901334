import type { Past, PastTask } from '../../schedule/past.ts';
import { expectedMinutes } from '../../tasks/expected.ts';
import type { Task } from '../../tasks/task.ts';
import { minutesBetween } from '../instants.ts';
import { peopleFrom, plannedTask } from '../plannedCrews.ts';
import type { BuildState, TaskState } from '../state.ts';

/**
 * What has happened, in minutes after the start of the build, for planning again and for forecasts: present attempts
 * that are done, at work or stopped. Where nobody told the start, a task told done is given its expected minutes.
 */
export function pastOf(state: BuildState, now: string): Past {
  const minutes = (time: string) => minutesBetween(state.start, time);
  const tasks = state.work.tasks.flatMap((task): PastTask[] => {
    const standing = state.tasks[task.id];
    if (!standing || standing.status === 'to-come') return [];
    return [pastTask(state, task, standing, minutes, minutes(now))];
  });
  return { now: minutes(now), tasks };
}

function pastTask(
  state: BuildState,
  task: Task,
  standing: TaskState,
  minutes: (time: string) => number,
  now: number,
): PastTask {
  const about = { task: task.id, crews: crewsAt(state, task, standing) };
  if (standing.status === 'done') {
    const finish = Math.min(now, standing.finishedAt ? minutes(standing.finishedAt) : now);
    const stretch = plannedTask(state.plan, task.id)?.stretch ?? 1;
    const start = standing.startedAt
      ? minutes(standing.startedAt)
      : finish - expectedMinutes(task.minutes, state.plan?.shape ?? 'pert') * stretch;
    return { ...about, status: 'done', start: Math.min(start, finish), finish };
  }
  const begun = standing.startedAt ?? standing.tells[0]?.at;
  return {
    ...about,
    status: standing.status === 'stopped' ? 'stopped' : 'at-work',
    start: Math.min(now, begun ? minutes(begun) : now),
    ...(standing.part > 0 ? { part: standing.part } : {}),
  };
}

/** Crews and people as planned; where others took the task, those. */
function crewsAt(state: BuildState, task: Task, { shares }: TaskState): PastTask['crews'] {
  const planned = plannedTask(state.plan, task.id)?.crews ?? [];
  const told = shares.map(({ crew }) => crew);
  if (planned.length > 0 && told.every((crew) => planned.some((each) => each.crew === crew)))
    return planned;
  return told.map((crew) => ({ crew, people: peopleFrom(state.plan, task, crew) }));
}
