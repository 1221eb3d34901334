import { expect } from 'vitest';
import { makePlan, type PlanOptions } from '#domain/schedule/makePlan.ts';
import type { Plan, PlannedTask } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { checkPlan } from './checkPlan.ts';

/** The plan with crews, which the independent checker has nothing against. Throws where there is none. */
export function planOf(work: Work, options: Partial<PlanOptions> = {}): Plan {
  const plan = makePlan(work, { shape: 'pert', crews: true, ...options });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  const { crews = true, past } = options;
  expect(checkPlan(work, plan.value, { crews, past })).toEqual([]);
  return plan.value;
}

export function plannedTask(plan: Plan, id: string): PlannedTask {
  return plan.tasks.find(({ task }) => task === id)!;
}
