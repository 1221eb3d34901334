import type { Forecast } from '#domain/forecast/forecast.ts';
import type { Plan } from '#domain/schedule/plan.ts';

type Foreseen = { readonly plan: Plan; readonly forecast: Forecast };

/**
 * What accepting a plan would change, in one sentence: "opens 14 min earlier; other people on 5 tasks". Both plans are
 * seen from now, at even chance on the same draws: the old plan's own times may be long past.
 */
export function gainSentence(offered: Foreseen, inForce: Foreseen | null): string {
  if (inForce === null)
    return `first plan: opens ${Math.round(offered.plan.minutesToOpen)} min after the start`;
  const saved = Math.round(inForce.forecast.p50 - offered.forecast.p50);
  const opens =
    saved === 0
      ? 'opens at the same time'
      : `opens ${Math.abs(saved)} min ${saved > 0 ? 'earlier' : 'later'}`;
  const changed = tasksWithOthers(offered.plan, inForce.plan);
  if (changed === 0) return `${opens}; the same people on every task`;
  return `${opens}; other people on ${changed} ${changed === 1 ? 'task' : 'tasks'}`;
}

/** How many tasks other crews or other numbers of people do, or only one of the plans has. */
function tasksWithOthers(plan: Plan, inForce: Plan): number {
  const people = (one: Plan) =>
    new Map(
      one.tasks.map(({ task, crews }) => [
        task,
        crews
          .map(({ crew, people: count }) => `${crew} ${count}`)
          .sort()
          .join(', '),
      ]),
    );
  const [after, before] = [people(plan), people(inForce)];
  const names = new Set([...after.keys(), ...before.keys()]);
  return [...names].filter((task) => after.get(task) !== before.get(task)).length;
}
