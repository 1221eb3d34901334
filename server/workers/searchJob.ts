import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import type { PlanNews } from '#domain/schedule/improve/news.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { SearchJob } from './searcher.ts';

export type SearchWatch = {
  readonly shouldStop: () => boolean;
  readonly shouldTake: () => boolean;
  readonly onProgress: (done: number, of: number) => void;
  readonly onNews: (news: PlanNews) => void;
};

/** Milliseconds between two pieces of news: in the first second plans are bettered faster than anybody reads. */
const newsEvery = 250;

/** Searches until stopped, told to take what there is, out of time, or proven. When stopped, nobody's to use. */
export function searchOf(job: SearchJob, watch: SearchWatch): Result<Plan, Refusal> {
  const { work, past, shape, accepted, seconds } = job;
  const begun = performance.now();
  let told = Number.NEGATIVE_INFINITY;
  let latest: PlanNews | null = null;
  const tell = (now: number) => {
    if (now - told < newsEvery) return;
    told = now;
    watch.onProgress(Math.min(seconds, (now - begun) / 1000), seconds);
    if (latest) watch.onNews(latest);
    latest = null;
  };
  return makePlan(work, {
    shape,
    crews: true,
    past,
    effort: Number.MAX_SAFE_INTEGER,
    near: accepted ?? undefined,
    report: (news) => {
      latest = news;
      tell(performance.now());
    },
    shouldStop: () => {
      const now = performance.now();
      tell(now);
      return watch.shouldStop() || watch.shouldTake() || now - begun >= seconds * 1000;
    },
  });
}
