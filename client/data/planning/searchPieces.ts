import type { PlanNews } from '#domain/schedule/improve/news.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { isProven } from '#domain/schedule/proven.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { PlanningSaid } from './messages.ts';

/** Milliseconds of the first piece of a search; each is twice as long as the one before, for proofs take their time. */
const firstPiece = 700;

/**
 * Searches in pieces, each from the best plan of those before with another seed, and hands out each better plan
 * and each higher bound. Ends when proven or out of time. `now` gives milliseconds. Without crews people are unlimited.
 */
export function searchPieces(
  work: Work,
  seconds: number,
  say: (said: PlanningSaid) => void,
  now: () => number,
): void {
  const end = now() + seconds * 1000;
  const crews = work.crews.length > 0;
  let best: Plan | null = null;
  let bound = 0;
  let schedules = 0;
  for (let seed = 1; seed === 1 || now() < end; seed += 1) {
    const until = Math.min(end, now() + firstPiece * 2 ** (seed - 1));
    let made = 0;
    const plan = makePlan(work, {
      shape: 'pert',
      crews,
      seed,
      effort: Number.MAX_SAFE_INTEGER,
      from: best ?? undefined,
      report: (news) => {
        made = news.schedules;
      },
      shouldStop: () => now() >= until,
    });
    if (!plan.ok) {
      say({ kind: 'refused', sentence: plan.reason.sentence });
      return;
    }
    schedules += made;
    const better = best === null || plan.value.minutesToOpen < best.minutesToOpen;
    if (better || plan.value.lowerBound > bound) {
      bound = Math.max(bound, plan.value.lowerBound);
      const kept: Plan = better || best === null ? plan.value : best;
      best = { ...kept, lowerBound: bound };
      say({ kind: 'best', plan: best, news: newsOf(best, schedules) });
    }
    if (best && newsOf(best, schedules).proven) return;
  }
}

function newsOf(plan: Plan, schedules: number): PlanNews {
  const { minutesToOpen, lowerBound } = plan;
  return { minutesToOpen, lowerBound, schedules, proven: isProven(plan) };
}
