import { pathToFileURL } from 'node:url';
import type { ChoiceTimes } from '#domain/bridge/choiceTimes.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import type { WhatMoved } from '#domain/forecast/moves/whatMoved.ts';
import type { WhatMovesIt } from '#domain/forecast/moves/whatMovesIt.ts';
import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import { JobThread } from './jobThread.ts';
import type { MovesThreadJob, Planned, Planner } from './planner.ts';

/**
 * Plans, forecasts, what moves them and the times of a choice, each in a thread of its own, so that a forecast never
 * waits for a plan and requests wait for none of them.
 * `folder` holds the bundled workers.
 */
export function threadPlanner(folder: string): Planner {
  const file = (name: string) => new URL(name, pathToFileURL(`${folder}/`));
  const plans = new JobThread(file('plan.worker.js'));
  const forecasts = new JobThread(file('forecast.worker.js'));
  const moves = new JobThread(file('moves.worker.js'));
  const choices = new JobThread(file('choice.worker.js'));
  return {
    plan: (job, options) => plans.run(job, options) as Promise<Result<Planned, Refusal>>,
    forecast: (job, options) => forecasts.run(job, options) as Promise<Forecast>,
    movesIt: (job, options) =>
      moves.run(
        { kind: 'moves-it', job } satisfies MovesThreadJob,
        options,
      ) as Promise<WhatMovesIt>,
    moved: (job, options) =>
      moves.run({ kind: 'moved', job } satisfies MovesThreadJob, options) as Promise<WhatMoved>,
    choice: (job, options) => choices.run(job, options) as Promise<Result<ChoiceTimes, Refusal>>,
    close: async () => {
      await Promise.all([plans.close(), forecasts.close(), moves.close(), choices.close()]);
    },
  };
}
