import type { Plan } from '#domain/schedule/plan.ts';

/** What accepting a plan would change, in one sentence: "opens 14 min earlier; changes 5 tasks". */
export function gainSentence(plan: Plan, inForce: Plan | null): string {
  const minutes = Math.round(plan.minutesToOpen);
  if (inForce === null) return `first plan: opens ${minutes} min after the start`;
  const saved = Math.round(inForce.minutesToOpen) - minutes;
  const opens =
    saved === 0
      ? 'opens at the same time'
      : `opens ${Math.abs(saved)} min ${saved > 0 ? 'earlier' : 'later'}`;
  const changed = changedTasks(plan, inForce);
  return `${opens}; changes ${changed} ${changed === 1 ? 'task' : 'tasks'}`;
}

/** Tasks whose start, finish, crews or people differ, or that only one of the plans has. */
function changedTasks(plan: Plan, inForce: Plan): number {
  const texts = (one: Plan) =>
    new Map(
      one.tasks.map(({ task, start, finish, crews }) => [
        task,
        JSON.stringify([start, finish, crews.map(({ crew, people }) => [crew, people])]),
      ]),
    );
  const [after, before] = [texts(plan), texts(inForce)];
  const names = new Set([...after.keys(), ...before.keys()]);
  return [...names].filter((task) => after.get(task) !== before.get(task)).length;
}
