import type { Work } from '../../tasks/work.ts';
import { makePlan, type PlanOptions } from '../makePlan.ts';
import { oneStronger } from '../strength.ts';

/** What one more person in a crew would gain. */
export type CrewGain = {
  readonly crew: string;
  /** Minutes that the build would open earlier, at least: more people never open later. */
  readonly minutesEarlier: number;
};

/**
 * What one more person in each crew would gain, each from planning the whole order of work again with the same effort.
 * `onProgress` hears how many plans of how many are made. When `shouldStop` says so, the gains found by then come back;
 * none when the work cannot be planned.
 */
export function gains(
  work: Work,
  options: PlanOptions,
  watch: {
    readonly shouldStop?: () => boolean;
    readonly onProgress?: (done: number, of: number) => void;
  } = {},
): CrewGain[] {
  const { shouldStop = () => false, onProgress } = watch;
  const of = work.crews.length + 1;
  const base = makePlan(work, { ...options, shouldStop });
  onProgress?.(1, of);
  const found: CrewGain[] = [];
  for (const [at, { id: crew }] of work.crews.entries()) {
    if (!base.ok || shouldStop()) {
      return found;
    }
    const more = makePlan(withOneMore(work, crew), { ...options, shouldStop, from: base.value });
    onProgress?.(at + 2, of);
    if (more.ok && !shouldStop()) {
      const earlier = base.value.minutesToOpen - more.value.minutesToOpen;
      found.push({ crew, minutesEarlier: Math.max(0, earlier) });
    }
  }
  return found;
}

function withOneMore(work: Work, crew: string): Work {
  return {
    ...work,
    crews: work.crews.map((own) => (own.id === crew ? oneStronger(own) : own)),
  };
}
