import { choiceOf, forecastOf, movedOf, movesItOf, planOf } from '#server/workers/jobs.ts';
import type { JobOptions, Planner } from '#server/workers/planner.ts';

/** Plans and forecasts in the thread of the test, at once. */
export function plannerHere(): Planner {
  const done = async <Value>(
    { signal, onProgress = () => {} }: JobOptions = {},
    work: (watch: {
      shouldStop: () => boolean;
      onProgress: (done: number, of: number) => void;
    }) => Value,
  ): Promise<Value> => {
    await Promise.resolve();
    signal?.throwIfAborted();
    const value = work({ shouldStop: () => signal?.aborted ?? false, onProgress });
    signal?.throwIfAborted();
    return value;
  };
  return {
    plan: (job, options) => done(options, (watch) => planOf(job, watch)),
    forecast: (job, options) => done(options, (watch) => forecastOf(job, watch)),
    movesIt: (job, options) => done(options, (watch) => movesItOf(job, watch)),
    moved: (job, options) => done(options, (watch) => movedOf(job, watch)),
    choice: (job, options) => done(options, (watch) => choiceOf(job, watch)),
    close: async () => {},
  };
}
