import type { ChoiceTimes } from '#domain/bridge/choiceTimes.ts';
import type { Doubts } from '#domain/forecast/doubt/compileDoubt.ts';
import type { Forecast, Shape } from '#domain/forecast/forecast.ts';
import type { DarkSpell } from '#domain/forecast/light/lightClock.ts';
import type { LeverSizes } from '#domain/forecast/moves/lever.ts';
import type { Seen } from '#domain/forecast/moves/seen.ts';
import type { WhatMoved } from '#domain/forecast/moves/whatMoved.ts';
import type { WhatMovesIt } from '#domain/forecast/moves/whatMovesIt.ts';
import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';

/** One forecast of a plan, seen from now. `askedFor` is in minutes after the start of the build. */
export type ForecastJob = Seen & {
  readonly askedFor: number | null;
  readonly runs: number;
  readonly seed: number;
};

/** A plan from now on and its forecast; beside it the forecast of the plan in force, on the same draws. */
export type PlanJob = {
  readonly work: Work;
  readonly past: Past;
  readonly doubts: Doubts;
  readonly shape: Shape;
  readonly askedFor: number | null;
  readonly runs: number;
  readonly seed: number;
  readonly inForce: { readonly work: Work; readonly plan: Plan } | null;
  /** A plan found already, to be forecast only. */
  readonly found?: Plan | null;
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

/** What would move the opening, seen from now. */
export type MovesItJob = {
  readonly seen: Seen;
  readonly sizes: LeverSizes;
  readonly runs: number;
  readonly seed: number;
};

/** What moved the opening promised at this confidence between two looks at a build. */
export type MovedJob = {
  readonly before: Seen;
  readonly after: Seen;
  readonly confidence: number;
  readonly runs: number;
  readonly seed: number;
};

/** What the thread is sent that explains forecasts. */
export type MovesThreadJob =
  | { readonly kind: 'moves-it'; readonly job: MovesItJob }
  | { readonly kind: 'moved'; readonly job: MovedJob };

/** How a job is followed and stopped. */
export type JobOptions = {
  readonly signal?: AbortSignal;
  readonly onProgress?: (done: number, of: number) => void;
};

/** What takes long enough to be done beside the server's own thread. Rejects with the signal's reason when stopped. */
export type Planner = {
  plan(job: PlanJob, options?: JobOptions): Promise<Result<Planned, Refusal>>;
  forecast(job: ForecastJob, options?: JobOptions): Promise<Forecast>;
  movesIt(job: MovesItJob, options?: JobOptions): Promise<WhatMovesIt>;
  moved(job: MovedJob, options?: JobOptions): Promise<WhatMoved>;
  choice(job: ChoiceJob, options?: JobOptions): Promise<Result<ChoiceTimes, Refusal>>;
  close(): Promise<void>;
};
