import type { Plan } from '../../schedule/plan.ts';
import type { Task } from '../../tasks/task.ts';

/**
 * Which repetition of its kind each task is, from 1, in the order of the plan. Tasks repeat when they do the same thing
 * to the bridge on the same side (bays of the left girder, braces, deck bays) with the same crews: the ones who
 * learn. Every other task is done once. By task id.
 */
export function repetitions(tasks: readonly Task[], plan: Plan): ReadonlyMap<string, number> {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const counts = new Map<string, number>();
  const order = plan.tasks.toSorted((one, other) => one.start - other.start);
  return new Map(
    order.map(({ task, crews }) => {
      const effect = byId.get(task)?.effect;
      if (!effect || effect.kind === 'move') return [task, 1];
      const side = 'side' in effect ? effect.side : '';
      const key = [effect.kind, side, ...crews.map(({ crew }) => crew).sort()].join(' ');
      const n = (counts.get(key) ?? 0) + 1;
      counts.set(key, n);
      return [task, n];
    }),
  );
}
