import type { PlannedWork } from '#domain/schedule/improve/keptTo.ts';
import { offerOf, offerSentence } from '#domain/schedule/improve/offer.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { PlanOffer } from '#shared/wirePlan.ts';

/**
 * What accepting a plan would change, in one sentence ("opens 14 min earlier; changes 5 orders for 2 crews") and in
 * figures. Both plans are seen from `past.now`: the old plan's own times may be long past. Where the new one is for
 * `changed` work, the gain is that of plan and changes together, even where the old one lacks people.
 */
export function gainOf(
  fresh: PlannedWork,
  inForce: PlannedWork | null,
  past: Past,
  changed = false,
): { readonly gain: string; readonly offer: PlanOffer | null } {
  if (inForce === null) {
    const gain = `first plan: opens ${Math.round(fresh.plan.minutesToOpen)} min after the start`;
    return { gain, offer: null };
  }
  const weighed = offerOf(fresh, inForce, past);
  const { opens, acceptedOpens } = weighed;
  const offer =
    changed && acceptedOpens !== null
      ? { ...weighed, gain: acceptedOpens - opens, needed: false }
      : weighed;
  return { gain: offerSentence(offer), offer };
}
