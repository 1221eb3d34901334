import type { ChoiceTimes } from '#domain/bridge/choiceTimes.ts';
import type { Forecast, Shape } from '#domain/forecast/forecast.ts';
import type { DarkSpell } from '#domain/forecast/light/lightClock.ts';
import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';

/** One forecast of a plan, seen from now. `askedFor` is in minutes after the start of the build. */
export type ForecastJob = {
  readonly work: Work;
  readonly plan: Plan;
  readonly past: Past;
  readonly askedFor: number | null;
  readonly runs: number;
  readonly seed: number;
};

/** A plan from now on and its forecast; beside it the forecast of the plan in force, on the same draws. */
export type PlanJob = {
  readonly work: Work;
  readonly past: Past;
  readonly shape: Shape;
  readonly askedFor: number | null;
  readonly runs: number;
  readonly seed: number;
  readonly inForce: { readonly work: Work; readonly plan: Plan } | null;
};

export type Planned = {
  readonly plan: Plan;
  readonly forecast: Forecast;
  readonly before: { readonly minutesToOpen: number; readonly forecast: Forecast } | null;
};

/** When one bridge of a choice opens, by a plan and a forecast of its order of work. */
export type ChoiceJob = {
  readonly work: Work;
  readonly dark: readonly DarkSpell[];
  readonly runs: number;
  readonly seed: number;
};

/** How a job is followed and stopped. */
export type JobOptions = {
  readonly signal?: AbortSignal;
  readonly onProgress?: (done: number, of: number) => void;
};

/** What takes long enough to be done beside the server's own thread. Rejects with the signal's reason when stopped. */
export type Planner = {
  plan(job: PlanJob, options?: JobOptions): Promise<Result<Planned, Refusal>>;
  forecast(job: ForecastJob, options?: JobOptions): Promise<Forecast>;
  choice(job: ChoiceJob, options?: JobOptions): Promise<Result<ChoiceTimes, Refusal>>;
  close(): Promise<void>;
};
