import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import type { PlanNews } from '#domain/schedule/improve/news.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { SearchJob } from './searcher.ts';

/** To a process that searches, about the search of that id. */
export type ToSearch =
  | { readonly id: number; readonly kind: 'search'; readonly job: SearchJob }
  | { readonly id: number; readonly kind: 'stop' | 'take' };

/** From a process that searches. */
export type FromSearch =
  | { readonly id: number; readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly id: number; readonly kind: 'news'; readonly news: PlanNews }
  | { readonly id: number; readonly kind: 'done'; readonly value: Result<Plan, Refusal> }
  | { readonly id: number; readonly kind: 'failed'; readonly error: unknown };
