import { expectedMinutes } from '../../tasks/expected.ts';
import type { Work } from '../../tasks/work.ts';
import type { Shape } from '../forecast.ts';

/** The same work with the expected minutes of each task for sure. */
export function sureWork(work: Work, shape: Shape): Work {
  return {
    ...work,
    tasks: work.tasks.map((task) => {
      const minutes = expectedMinutes(task.minutes, shape);
      return { ...task, minutes: { quick: minutes, likely: minutes, slow: minutes } };
    }),
  };
}
