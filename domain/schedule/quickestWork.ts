import type { Work } from '../tasks/work.ts';
import { stretchOf } from './ways.ts';

/** The same order of work with the minutes that each task takes with the most people it can use. */
export function quickestWork(work: Work): Work {
  return {
    ...work,
    tasks: work.tasks.map((task) => {
      const stretch = stretchOf(
        task.needs,
        task.needs.map(({ people }) => people.most),
      );
      const { quick, likely, slow } = task.minutes;
      return stretch < 1
        ? {
            ...task,
            minutes: { quick: quick * stretch, likely: likely * stretch, slow: slow * stretch },
          }
        : task;
    }),
  };
}
