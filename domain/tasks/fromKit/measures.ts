import type { Bridge } from '../../bridge/bridge.ts';
import { type HoldNumbers, holdNumbers } from '../../bridge/safety/holdNumbers.ts';
import type { Kit } from '../../kit/kit.ts';
import type { HoldTemplate, Limit, Reckoned } from '../../kit/order.ts';
import type { Measure } from '../hold.ts';
import type { Repetition } from './repetition.ts';

/** What a hold measures in one repetition: its limits as numbers, beside them what was reckoned. */
export function measuresOf(
  hold: HoldTemplate,
  repetition: Repetition,
  bridge: Bridge,
  kit: Kit,
): Measure[] {
  const stage = bridge.stages.find((one) => one.stage === repetition.stage);
  // Statics of every move take a while: only for holds that show them.
  let known: HoldNumbers | undefined;
  const numbers = () => {
    known ??= holdNumbers(bridge, kit, {}).find((one) => one.stage === stage?.stage);
    return known;
  };
  return hold.measures.flatMap(({ least, most, reckoned, ...measure }): Measure[] => {
    const from = least === undefined ? undefined : limitOf(least, stage, bridge, kit);
    const to = most === undefined ? undefined : limitOf(most, stage, bridge, kit);
    const countsNothing = (least === 'bays' || least === 'decked') && from === 0;
    const landed = least === 'margin' && stage?.balance === null;
    if (countsNothing || landed) return [];
    const worked = reckoned && reckonedFor(reckoned, bridge, numbers);
    return [
      {
        ...measure,
        ...(from === undefined ? {} : { least: from }),
        ...(to === undefined ? {} : { most: to }),
        ...(worked === undefined ? {} : { reckoned: Math.round(worked * 100) / 100 }),
      },
    ];
  });
}

function limitOf(
  limit: Limit,
  stage: Bridge['stages'][number] | undefined,
  bridge: Bridge,
  kit: Kit,
): number | undefined {
  switch (limit) {
    case 'bays':
      return stage?.bays ?? bridge.bays;
    case 'decked':
      return stage?.decked.length ?? 0;
    case 'margin':
      return kit.launch?.margin ?? 0;
    case 'bearing-near':
      return kit.bearing.near;
    case 'bearing-far':
      return kit.bearing.far;
    case 'wind':
      return kit.limits?.wind;
    default:
      return limit;
  }
}

function reckonedFor(
  reckoned: Reckoned,
  { bearing }: Bridge,
  numbers: () => HoldNumbers | undefined,
): number | undefined {
  switch (reckoned) {
    case 'margin':
      return numbers()?.margin;
    case 'rollers':
      return numbers()?.rollerKilonewtons;
    case 'bearing-near':
      return bearing.near;
    case 'bearing-far':
      return bearing.far;
  }
}
