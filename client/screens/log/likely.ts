import { orderIndex } from '#domain/progress/orderIndex.ts';
import { mayWorkAt, plannedTask } from '#domain/progress/plannedCrews.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { Task } from '#domain/tasks/task.ts';

/** What a crew is at, and what comes next for it, in the order of the plan. Hold points are nobody's to report. */
export type CrewWork = { readonly atWork: readonly Task[]; readonly next: readonly Task[] };

/** The work of one crew: what it is at or has stopped, and its next `most` tasks, those that may start first. */
export function workOfCrew(state: BuildState, crew: string, most = 3): CrewWork {
  const own = state.work.tasks.filter((task) => !task.hold && mayWorkAt(state, task, crew));
  const atWork = own.filter((task) => isAtIt(state, task, crew));
  const next = own
    .filter((task) => state.tasks[task.id]?.status === 'to-come')
    .toSorted((a, b) => rank(state, a) - rank(state, b) || a.number - b.number)
    .slice(0, most);
  return { atWork, next };
}

function isAtIt(state: BuildState, task: Task, crew: string): boolean {
  const standing = state.tasks[task.id];
  const share = standing?.shares.find((one) => one.crew === crew);
  const status = share?.status ?? standing?.status;
  return status === 'at-work' || status === 'stopped';
}

/** By planned start; what still waits for other work comes after what may start. */
function rank(state: BuildState, task: Task): number {
  const start = plannedTask(state.plan, task.id)?.start ?? task.number;
  return mayStart(state, task.id) ? start : start + 1_000_000;
}

/** Whether everything that must be finished, or begun, before a task is. */
export function mayStart(state: BuildState, task: string): boolean {
  return (orderIndex(state.work).before.get(task) ?? []).every(({ from, counts }) => {
    const status = state.tasks[from]?.status;
    return status === 'done' || (counts === 'start' && status !== 'to-come');
  });
}

/** The keep-off task that crews tell "off" for: the next one in the order of the plan that is not done. */
export function nextKeepOff(state: BuildState): Task | null {
  const open = state.work.tasks.filter(
    (task) => task.keepOff && state.tasks[task.id]?.status !== 'done',
  );
  return open.toSorted((a, b) => rank(state, a) - rank(state, b) || a.number - b.number)[0] ?? null;
}
