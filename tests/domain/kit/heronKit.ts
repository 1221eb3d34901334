import type { Bridge } from '#domain/bridge/bridge.ts';
import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { readGround } from '#domain/bridge/readGround.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { readKit } from '#domain/kit/readKit.ts';
import heronFile from '#domain/kits/heron.json' with { type: 'json' };
import larchFordFile from '#domain/kits/larchFord.json' with { type: 'json' };
import type { Result } from '#domain/result.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import type { Work } from '#domain/tasks/work.ts';

/** The value of a result that a test takes for granted. */
export function granted<Value>(result: Result<Value, unknown>): Value {
  if (!result.ok) {
    throw new Error(JSON.stringify(result.reason));
  }
  return result.value;
}

export const heron: Kit = granted(readKit(heronFile));

export const larchFord: Ground = granted(readGround(larchFordFile));

/** Larch Ford with some things otherwise; class 1 and room unmeasured unless said. */
export function ground(other: Partial<Ground> = {}): Ground {
  return { ...larchFord, loadClass: 1, roomBehind: null, ...other };
}

export function bridgeOver(gap: number, kit: Kit = heron): Bridge {
  return granted(designBridge(ground({ gap }), kit, 'hash'));
}

export function workOver(gap: number, kit: Kit = heron): Work {
  return granted(orderOfWork(bridgeOver(gap, kit), kit));
}
