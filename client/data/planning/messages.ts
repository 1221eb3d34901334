import type { Shape } from '#domain/forecast/forecast.ts';
import type { CrewGain } from '#domain/schedule/improve/gains.ts';
import type { PlanNews } from '#domain/schedule/improve/news.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';

/** To the planning worker: one job; it is given up by ending the worker. */
export type PlanningJob =
  | { readonly kind: 'search'; readonly work: Work; readonly seconds: number }
  | { readonly kind: 'gains'; readonly work: Work; readonly past: Past; readonly shape: Shape };

/** From the planning worker. `best` comes with every better plan, so that it can be taken at any time. */
export type PlanningSaid =
  | { readonly kind: 'best'; readonly plan: Plan; readonly news: PlanNews }
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'gains'; readonly gains: readonly CrewGain[] }
  | { readonly kind: 'refused'; readonly sentence: string }
  | { readonly kind: 'over' };
