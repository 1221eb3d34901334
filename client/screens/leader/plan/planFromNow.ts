import type { BuildState } from '#domain/progress/state.ts';
import { courseNow } from '#domain/progress/views/courseNow.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { iso } from '../../../words/units.ts';

/**
 * The plan in force as it runs from now (milliseconds): what has begun where it truly began, the rest no earlier than
 * links, hand-overs, stores and the clock let it. What a plan on trial is to be compared with; null without a plan.
 */
export function planFromNow(state: BuildState, now: number): Plan | null {
  const course = courseNow(state, iso(now));
  if (!state.plan || !course) return null;
  const tasks = state.plan.tasks.map((task) => {
    const run = course.runs.get(task.task);
    return run ? { ...task, start: run.start, finish: run.finish } : task;
  });
  return { ...state.plan, tasks, minutesToOpen: course.opening };
}
