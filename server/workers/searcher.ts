import type { Shape } from '#domain/forecast/forecast.ts';
import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import type { PlanNews } from '#domain/schedule/improve/news.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';

/** A long search for a better plan of what is still to come. */
export type SearchJob = {
  readonly work: Work;
  readonly past: Past;
  readonly shape: Shape;
  /** The plan in force: its orders are kept where changing them does not gain enough. */
  readonly accepted: Plan | null;
  /** Longest time to search. */
  readonly seconds: number;
};

export type SearchOptions = {
  /** Gives the search up. */
  readonly signal?: AbortSignal;
  /** Ends the search with the best plan found so far. */
  readonly take?: AbortSignal;
  /** Seconds searched, of at most so many. */
  readonly onProgress?: (done: number, of: number) => void;
  /** The best plan and bound so far, a few times a second at most. */
  readonly onNews?: (news: PlanNews) => void;
};

/** Searches with what the machine can spare, one search at a time. Rejects with the signal's reason when given up. */
export type Searcher = {
  search(job: SearchJob, options?: SearchOptions): Promise<Result<Plan, Refusal>>;
  close(): Promise<void>;
};
