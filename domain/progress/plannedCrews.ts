import type { Plan, PlannedTask } from '../schedule/plan.ts';
import type { Task } from '../tasks/task.ts';
import type { BuildState } from './state.ts';

/** Who is expected to work at a task. */
export type Expected = {
  /** Crews known by name. */
  readonly named: readonly string[];
  /** How many crews must tell before the task is done; 1 also for a task that names nobody. */
  readonly count: number;
};

const planned = new WeakMap<Plan, ReadonlyMap<string, PlannedTask>>();

/** The task as the plan in force has it; undefined without a plan. */
export function plannedTask(plan: Plan | null, task: string): PlannedTask | undefined {
  if (!plan) return undefined;
  let index = planned.get(plan);
  if (!index) {
    index = new Map(plan.tasks.map((each) => [each.task, each]));
    planned.set(plan, index);
  }
  return index.get(task);
}

/** The crews of the accepted plan; without one, those that the task's needs name alone; else whichever crew tells. */
export function expectedCrews(plan: Plan | null, task: Task): Expected {
  const crews = plannedTask(plan, task.id)?.crews.filter(({ people }) => people > 0) ?? [];
  if (crews.length > 0) return { named: crews.map(({ crew }) => crew), count: crews.length };
  const needs = task.needs.filter(({ people }) => people.most > 0);
  const named = needs.flatMap(({ anyOf }) => (anyOf.length === 1 ? anyOf : []));
  return { named: [...new Set(named)], count: Math.max(1, needs.length) };
}

/** People that a crew gives to a task: by plan, else the usual number of the need that names it, else 0. */
export function peopleFrom(plan: Plan | null, task: Task, crew: string): number {
  const given = plannedTask(plan, task.id)?.crews.find((each) => each.crew === crew);
  if (given) return given.people;
  return task.needs.find(({ anyOf }) => anyOf.includes(crew))?.people.usual ?? 0;
}

/**
 * Whether a crew may turn up at a task: by plan or, without one, by its needs. A need that names nobody may be met
 * by any crew that is not attached.
 */
export function mayWorkAt(state: BuildState, task: Task, crew: string): boolean {
  const crews = plannedTask(state.plan, task.id)?.crews;
  if (crews) return crews.some((each) => each.crew === crew && each.people > 0);
  return task.needs.some(({ anyOf, people }) => {
    if (people.most === 0) return false;
    if (anyOf.length > 0) return anyOf.includes(crew);
    return !state.work.crews.find(({ id }) => id === crew)?.attached;
  });
}
