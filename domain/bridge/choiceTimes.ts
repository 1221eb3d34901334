import { usualDoubt } from '../forecast/doubt/usualDoubt.ts';
import type { DarkSpell } from '../forecast/light/lightClock.ts';
import { simulate } from '../forecast/simulate.ts';
import type { Refusal } from '../refusal.ts';
import { good, type Result } from '../result.ts';
import { makePlan } from '../schedule/makePlan.ts';
import type { Work } from '../tasks/work.ts';

/** Schedules tried for each bridge of a choice: enough, with people to choose, that no bridge loses by a poor plan, and soon done. */
const effort = 4000;

/** When a bridge of the choice opens, minutes after the start of the build. */
export type ChoiceTimes = {
  /** By the plan with the kit's crews, every task taking its expected minutes. */
  readonly planned: number;
  /** Even chance, and eight in ten. */
  readonly p50: number;
  readonly p80: number;
};

export type ChoiceTimesOptions = {
  readonly runs: number;
  readonly seed: number;
  /** When it is dark at the site; none where place or start are unknown. */
  readonly dark: readonly DarkSpell[];
  readonly shouldStop?: () => boolean;
  /** Runs of the forecast that are made. */
  readonly onProgress?: (done: number) => void;
};

/**
 * Plans an order of work with its crews and forecasts the plan with the usual doubt, so that bridges of a choice are
 * held against each other by when they open and not by how long they are. The same seed for all of them: the same day,
 * the same crews. Refuses what `makePlan` does.
 */
export function choiceTimes(work: Work, options: ChoiceTimesOptions): Result<ChoiceTimes, Refusal> {
  const { runs, seed, dark, shouldStop, onProgress } = options;
  const plan = makePlan(work, { shape: 'pert', crews: true, effort, shouldStop });
  if (!plan.ok) {
    return plan;
  }
  const { p50, p80 } = simulate(work, plan.value, {
    runs,
    seed,
    shape: 'pert',
    askedFor: null,
    doubts: { doubt: usualDoubt(work), dark },
    ...(shouldStop && { shouldStop }),
    ...(onProgress && { onProgress }),
  });
  return good({ planned: plan.value.minutesToOpen, p50, p80 });
}
