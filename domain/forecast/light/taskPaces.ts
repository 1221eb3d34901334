import { type Pace, pacesOf } from '../../schedule/pace.ts';
import type { Past } from '../../schedule/past.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { Work } from '../../tasks/work.ts';

/**
 * The paces of tasks whose crews rest, or that want daylight, in the order of `work.tasks`: null for tasks whose clock
 * is that of everybody, and null for all where there is no other. `dark` is what the forecast knows of the nights.
 */
export function taskPaces(
  work: Work,
  plan: Plan,
  past: Past | undefined,
  dark: Work['dark'],
): (Pace | null)[] | null {
  const { dark: _, ...asPlanned } = work;
  const paces = pacesAsManned(dark ? { ...asPlanned, dark } : asPlanned, plan, past).map((pace) =>
    pace && pace.pauses.length + pace.shut.length > 0 ? pace : null,
  );
  return paces.some((pace) => pace !== null) ? paces : null;
}

/**
 * At what pace each task goes with its planned people, or those who have begun it, in the order of `work.tasks`; null for
 * tasks that nothing slows or stops.
 */
export function pacesAsManned(work: Work, plan: Plan, past: Past | undefined): (Pace | null)[] {
  const paceOf = pacesOf(work);
  const planned = new Map(plan.tasks.map((task) => [task.task, task.crews]));
  const happened = new Map(past?.tasks.map((task) => [task.task, task]));
  return work.tasks.map((task) => {
    const before = happened.get(task.id);
    const crews = before?.crews ?? planned.get(task.id) ?? [];
    const atWork = crews.filter(({ people }) => people > 0).map(({ crew }) => crew);
    const started = before !== undefined && before.status !== 'stopped';
    return paceOf(task, atWork, started);
  });
}
