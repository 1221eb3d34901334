import { type ChoiceTimes, choiceTimes } from '#domain/bridge/choiceTimes.ts';
import { DrawTables } from '#domain/forecast/drawTables.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';
import { milestonesOf } from '#domain/forecast/milestones.ts';
import { type WhatMoved, whatMoved } from '#domain/forecast/moves/whatMoved.ts';
import { type WhatMovesIt, whatMovesIt } from '#domain/forecast/moves/whatMovesIt.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import type { Refusal } from '#domain/refusal.ts';
import { good, type Result } from '#domain/result.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { ChoiceJob, ForecastJob, MovedJob, MovesItJob, PlanJob, Planned } from './planner.ts';

/** How a job under way hears that it is no longer wanted, and says how far it is. */
export type JobWatch = {
  readonly shouldStop: () => boolean;
  readonly onProgress: (done: number, of: number) => void;
};

/** Shapes kept between forecasts: builds share nearly all of theirs. A few kilobytes each, so not for ever. */
const mostTables = 300;
let kept = new DrawTables();

function tables(): DrawTables {
  if (kept.count > mostTables) kept = new DrawTables();
  return kept;
}

/** Forecasts a plan. When stopped, what comes back is of the runs made until then and nobody's to use. */
export function forecastOf(job: ForecastJob, { shouldStop, onProgress }: JobWatch): Forecast {
  const { work, plan, past, doubts, askedFor, runs, seed } = job;
  return simulate(work, plan, {
    runs,
    seed,
    shape: plan.shape,
    askedFor,
    past,
    doubts,
    milestones: milestonesOf(work),
    tables: tables(),
    shouldStop,
    onProgress: (done) => onProgress(done, runs),
  });
}

/** Plans from now on and forecasts the plan, and the one in force beside it, on the same draws. */
export function planOf(job: PlanJob, watch: JobWatch): Result<Planned, Refusal> {
  const { work, past, shape, inForce, found, runs } = job;
  const { shouldStop, onProgress } = watch;
  // The search counts as much as one forecast.
  const parts = inForce ? 3 : 2;
  onProgress(0, parts * runs);
  const near = inForce?.plan;
  const plan = found ? good(found) : makePlan(work, { shape, crews: true, past, near, shouldStop });
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

/** What would move the opening from now. When stopped, what comes back is nobody's to use. */
export function movesItOf({ seen, ...options }: MovesItJob, watch: JobWatch): WhatMovesIt {
  return whatMovesIt(seen, { ...options, ...watch });
}

/** What moved the opening between two looks. When stopped, what comes back is nobody's to use. */
export function movedOf({ before, after, ...options }: MovedJob, watch: JobWatch): WhatMoved {
  return whatMoved(before, after, { ...options, ...watch });
}
