import { orderIndex } from '#domain/progress/orderIndex.ts';
import { plannedTask } from '#domain/progress/plannedCrews.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { crewNow } from '#domain/progress/views/crewNow.ts';
import type { Task } from '#domain/tasks/task.ts';

/** What a crew is at, and what comes next for it. Hold points are the inspector's to report. */
export type CrewWork = { readonly atWork: readonly Task[]; readonly next: readonly Task[] };

/** The work of one crew that somebody may tell of, seen from now (milliseconds): what can start stands before the rest. */
export function workOfCrew(state: BuildState, crew: string, now: number): CrewWork {
  const jobs = crewNow(state, crew, new Date(now).toISOString());
  const { task } = orderIndex(state.work);
  const tasksOf = (some: typeof jobs.now): Task[] =>
    some.filter(({ hold }) => !hold).flatMap((job) => task.get(job.task) ?? []);
  return { atWork: tasksOf(jobs.now), next: tasksOf([...jobs.ready, ...jobs.next]) };
}

/** The keep-off task that crews tell "off" for: the next one in the order of the plan that is not done. */
export function nextKeepOff(state: BuildState): Task | null {
  const open = state.work.tasks.filter(
    ({ id, keepOff }) => keepOff && state.tasks[id]?.status !== 'done',
  );
  const start = ({ id, number }: Task): number => plannedTask(state.plan, id)?.start ?? number;
  return open.toSorted((a, b) => start(a) - start(b) || a.number - b.number)[0] ?? null;
}
