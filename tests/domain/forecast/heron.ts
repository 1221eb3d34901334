import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Kit } from '#domain/kit/kit.ts';
import heron from '#domain/kits/heron.json' with { type: 'json' };
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';

/** The kit of the demo build. */
export const heronKit = heron as unknown as Kit;

const bridge = designBridge(larchFord as Ground, heronKit, '');
if (!bridge.ok) throw new Error('The demo ground has no bridge.');
const order = orderOfWork(bridge.value, heronKit);
if (!order.ok) throw new Error(order.reason.sentence);

/** The order of work of the demo build. */
export const heronWork = order.value;
