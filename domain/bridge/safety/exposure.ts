import type { Plan } from '../../schedule/plan.ts';
import type { Work } from '../../tasks/work.ts';

/** Time that people spend in a zone. Person-minutes. */
export type Exposure = {
  readonly zone: string;
  readonly personMinutes: number;
  /** Of that with something moving there: the own people of keep-off tasks. */
  readonly moving: number;
  /** Most people there at once, keep-off tasks counted with theirs. */
  readonly mostPeople: number;
};

/** How long people are in each zone by a plan, and how long of that next to moving loads; zones in the work's order. */
export function exposure(work: Work, plan: Plan): Exposure[] {
  const planned = new Map(plan.tasks.map((task) => [task.task, task]));
  return work.zones.map(({ id }) => {
    const stays = work.tasks.flatMap((task) => {
      const when = planned.get(task.id);
      const people = when?.crews.reduce((sum, crew) => sum + crew.people, 0) ?? 0;
      return when && task.zones.includes(id)
        ? [{ start: when.start, finish: when.finish, people, moving: task.keepOff }]
        : [];
    });
    const minutes = (some: typeof stays) =>
      some.reduce((sum, { start, finish, people }) => sum + (finish - start) * people, 0);
    const at = (minute: number) =>
      stays
        .filter(({ start, finish }) => start <= minute && minute < finish)
        .reduce((sum, { people }) => sum + people, 0);
    return {
      zone: id,
      personMinutes: minutes(stays),
      moving: minutes(stays.filter(({ moving }) => moving)),
      mostPeople: Math.max(0, ...stays.map(({ start }) => at(start))),
    };
  });
}
