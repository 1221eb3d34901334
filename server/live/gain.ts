import { offerOf, offerSentence } from '#domain/schedule/improve/offer.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { PlanOffer } from '#shared/wirePlan.ts';

/**
 * What accepting a plan would change, in one sentence ("opens 14 min earlier; changes 5 orders for 2 crews") and in
 * figures. Both plans are seen from `now`, minutes after the start: the old plan's own times may be long past. Where the
 * new one is for changed work, `earlier` are the minutes that plan and changes together open earlier.
 */
export function gainOf(
  work: Work,
  plan: Plan,
  inForce: Plan | null,
  now: number,
  earlier: number | null = null,
): { readonly gain: string; readonly offer: PlanOffer | null } {
  if (inForce === null) {
    const gain = `first plan: opens ${Math.round(plan.minutesToOpen)} min after the start`;
    return { gain, offer: null };
  }
  const weighed = offerOf(work, inForce, plan, now);
  const offer = earlier === null ? weighed : { ...weighed, gain: earlier, needed: false };
  return { gain: offerSentence(offer), offer };
}
