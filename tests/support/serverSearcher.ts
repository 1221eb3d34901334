import type { Searcher } from '#server/workers/searcher.ts';
import { searchOf } from '#server/workers/searchJob.ts';

/** Searches in the thread of the test, until the time is up or the plan is proven. */
export function searcherHere(): Searcher {
  return {
    search: async (job, { signal, take, onProgress = () => {}, onNews = () => {} } = {}) => {
      await Promise.resolve();
      signal?.throwIfAborted();
      const shouldStop = () => signal?.aborted ?? false;
      const shouldTake = () => take?.aborted ?? false;
      return searchOf(job, { shouldStop, shouldTake, onProgress, onNews });
    },
    close: async () => {},
  };
}
