import { courseOf, type TaskRun } from '#domain/forecast/course.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

/** How a task of the story went against its expected minutes: a little over and under, the same every time. */
function luck(task: Task): number {
  const spread = [0.94, 1.06, 1, 1.12, 0.9, 1.02, 0.97, 1.08];
  return spread[(task.number * 5) % spread.length]!;
}

/**
 * When each task of the story starts and finishes: the plan's course from the start of the build, through the same dark,
 * with the minutes that fate gave it. A task behind a load in `missing` never starts. In the order of the plan.
 */
export function playTimes(
  { loads, ...work }: Work,
  plan: Plan,
  missing: ReadonlySet<string>,
): TaskRun[] {
  const coming = loads.map((load) =>
    missing.has(load.id) ? { ...load, arrives: Number.POSITIVE_INFINITY } : load,
  );
  const { runs } = courseOf({ ...work, loads: coming }, plan, { now: 0, tasks: [] }, luck);
  return plan.tasks
    .map(({ task }) => runs.get(task)!)
    .filter(({ start }) => Number.isFinite(start));
}
