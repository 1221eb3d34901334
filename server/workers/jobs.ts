import { type ChoiceTimes, choiceTimes } from '#domain/bridge/choiceTimes.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import type { Refusal } from '#domain/refusal.ts';
import { good, type Result } from '#domain/result.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { ChoiceJob, ForecastJob, PlanJob, Planned } from './planner.ts';

/** How a job under way hears that it is no longer wanted, and says how far it is. */
export type JobWatch = {
  readonly shouldStop: () => boolean;
  readonly onProgress: (done: number, of: number) => void;
};

/** Forecasts a plan. When stopped, what comes back is of the runs made until then and nobody's to use. */
export function forecastOf(job: ForecastJob, { shouldStop, onProgress }: JobWatch): Forecast {
  const { work, plan, past, askedFor, runs, seed } = job;
  return simulate(work, plan, {
    runs,
    seed,
    shape: plan.shape,
    askedFor,
    past,
    shouldStop,
    onProgress: (done) => onProgress(done, runs),
  });
}

/** Plans from now on and forecasts the plan, and the one in force beside it, on the same draws. */
export function planOf(job: PlanJob, watch: JobWatch): Result<Planned, Refusal> {
  const { work, past, shape, inForce, runs } = job;
  const { shouldStop, onProgress } = watch;
  // The search counts as much as one forecast.
  const parts = inForce ? 3 : 2;
  onProgress(0, parts * runs);
  const plan = makePlan(work, { shape, crews: true, past, shouldStop });
  if (!plan.ok) return plan;
  onProgress(runs, parts * runs);
  const forecast = forecastOf(
    { ...job, plan: plan.value },
    { shouldStop, onProgress: (done) => onProgress(runs + done, parts * runs) },
  );
  const before = inForce && {
    minutesToOpen: inForce.plan.minutesToOpen,
    forecast: forecastOf(
      { ...job, ...inForce },
      { shouldStop, onProgress: (done) => onProgress(2 * runs + done, parts * runs) },
    ),
  };
  return good({ plan: plan.value, forecast, before });
}

/** When one bridge of a choice opens. When stopped, what comes back is nobody's to use. */
export function choiceOf(
  { work, dark, runs, seed }: ChoiceJob,
  { shouldStop, onProgress }: JobWatch,
): Result<ChoiceTimes, Refusal> {
  return choiceTimes(work, {
    runs,
    seed,
    dark,
    shouldStop,
    onProgress: (done) => onProgress(done, runs),
  });
}
