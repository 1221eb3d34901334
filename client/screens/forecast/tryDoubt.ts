import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { minutesAskedFor } from '#domain/progress/views/asTold.ts';
import { seenNow } from '#domain/progress/views/seenNow.ts';
import type { Plan } from '#domain/schedule/plan.ts';

/** The opening as it is, and with another doubt, both seen from now on the same luck. */
export type DoubtTrial = { readonly before: Forecast; readonly after: Forecast };

/**
 * Forecasts the plan in force here on the device, without and with a change of the doubt: nobody else sees it. `now`
 * is ISO 8601 UTC; `runs` and `seed` are those of the forecast that the page shows, so that the difference is the change's.
 */
export function tryDoubt(
  state: BuildState,
  plan: Plan,
  doubt: Doubt,
  now: string,
  { runs, seed }: Pick<Forecast, 'runs' | 'seed'>,
): DoubtTrial {
  const forecast = (of: BuildState): Forecast => {
    const { work, past, doubts } = seenNow(of, plan, now);
    const askedFor = minutesAskedFor(of);
    return simulate(work, plan, { runs, seed, shape: plan.shape, askedFor, past, doubts });
  };
  return { before: forecast(state), after: forecast({ ...state, doubt }) };
}
