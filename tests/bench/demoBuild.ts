import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Kit } from '#domain/kit/kit.ts';
import heron from '#domain/kits/heron.json' with { type: 'json' };
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import type { Work } from '#domain/tasks/work.ts';

/** Where the demo build stands, degrees north and east. */
export const demoPlace = larchFord.place;

/** The order of work of the demo build, planned with crews and zones. `effort` as in `makePlan`. */
export function demoBuild(effort?: number): { work: Work; plan: Plan } {
  const kit = heron as unknown as Kit;
  const bridge = designBridge(larchFord as Ground, kit, '');
  if (!bridge.ok) throw new Error(bridge.reason.map(({ sentence }) => sentence).join(' '));
  const order = orderOfWork(bridge.value, kit);
  if (!order.ok) throw new Error(order.reason.sentence);
  const work = order.value;
  const planned = makePlan(work, { shape: 'pert', crews: true, effort });
  if (!planned.ok) throw new Error(planned.reason.sentence);
  return { work, plan: planned.value };
}
