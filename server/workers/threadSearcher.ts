import { pathToFileURL } from 'node:url';
import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import type { PlanNews } from '#domain/schedule/improve/news.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { JobThread } from './jobThread.ts';
import type { Searcher } from './searcher.ts';

/** Searches in one thread of low priority. `folder` holds the bundled workers. */
export function threadSearcher(folder: string): Searcher {
  const thread = new JobThread(new URL('search.worker.js', pathToFileURL(`${folder}/`)));
  return {
    search: (job, { onNews, ...options } = {}) =>
      thread.run(job, {
        ...options,
        ...(onNews && { onNews: (news: unknown) => onNews(news as PlanNews) }),
      }) as Promise<Result<Plan, Refusal>>,
    close: () => thread.close(),
  };
}
