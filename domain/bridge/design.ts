import type { Kit } from '../kit/kit.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import type { Bridge } from './bridge.ts';
import { floatWay } from './floatWay.ts';
import type { Ground } from './ground.ts';
import { launchWay } from './launchWay.ts';
import { lengthLimits } from './lengthLimits.ts';
import { partsList } from './parts.ts';
import { baysNeeded, lengthNeeded, loadClassAt } from './reach.ts';
import { unknownsOf } from './unknowns.ts';
import { type Limit, metres, tidy, type Way } from './way.ts';

/** What a leader wants other than what the rules choose. */
export type Wish = { readonly bays?: number; readonly nose?: number };

/**
 * The bridge of this kit that answers the ground: the fewest whole bays that cover gap, setbacks and least bearings;
 * the shortest nose that holds the balance, with rear bays decked early where the kit lets them be; stages of the
 * launch (`launchStages`); room behind; load class by length. What is over in length is shared by both bearings.
 *
 * Refuses with every limit that binds, each with what would free it. What nobody measured is never refused: it is
 * named in `unknowns`. `kitHash` is kept in the bridge, so that a record names the very text of the kit.
 */
export function designBridge(
  ground: Ground,
  kit: Kit,
  kitHash: string,
  wish: Wish = {},
): Result<Bridge, Refusal[]> {
  const needed = baysNeeded(ground, kit);
  const bays = wish.bays ?? needed;
  const limits = lengthLimits(ground, kit, bays, needed);
  const reaches = Number.isInteger(bays) && needed <= bays && bays <= kit.bay.most;
  if (!reaches) {
    return refused(limits);
  }
  const way = wayOver(ground, kit, bays, wish.nose);
  const all = [...limits, ...way.limits, ...roomLimits(ground, way)];
  return all.length > 0 ? refused(all) : good(bridgeOf(ground, kit, kitHash, bays, way));
}

function wayOver(ground: Ground, kit: Kit, bays: number, nose: number | undefined): Way {
  return kit.launch
    ? launchWay(ground, kit, kit.launch, bays, nose)
    : floatWay(ground, kit, kit.boom ?? { lot: 1, room: 0 }, bays);
}

function roomLimits({ roomBehind }: Ground, { stages, room }: Way): Limit[] {
  if (roomBehind === null || stages.length === 0 || roomBehind >= room) {
    return [];
  }
  const sentence = `The work needs ${metres(room)} of firm ground behind the near bank and there are ${metres(roomBehind)}: clear ${metres(room - roomBehind)} more.`;
  return [{ sentence, of: ['roomBehind'] }];
}

function refused(limits: readonly Limit[]): Result<Bridge, Refusal[]> {
  return bad(limits.map(({ sentence, of }) => refusal('bridge-impossible', sentence, of)));
}

function bridgeOf(ground: Ground, kit: Kit, hash: string, bays: number, way: Way): Bridge {
  const length = bays * kit.bay.length;
  const spare = length - lengthNeeded(ground, kit);
  return {
    kit: { name: kit.name, title: kit.title, hash, notForUse: kit.notForUse },
    manner: kit.manner,
    bays,
    bayLength: kit.bay.length,
    length: tidy(length),
    nose: way.girder.nose,
    noseLength: tidy(way.girder.noseLength),
    bearing: { near: tidy(kit.bearing.near + spare / 2), far: tidy(kit.bearing.far + spare / 2) },
    loadClass: loadClassAt(kit, length) ?? 0,
    gap: ground.gap,
    landsAt: tidy(way.landsAt),
    roomNeeded: tidy(way.room),
    masses: way.girder.masses,
    stages: [...way.stages],
    parts: partsList(kit, bays, way.girder.nose),
    ...softBanksOf(ground),
    unknowns: unknownsOf(ground, way.room),
  };
}

function softBanksOf(ground: Ground): Pick<Bridge, 'softBanks'> {
  const softBanks = (['near', 'far'] as const).filter((bank) => ground[bank].soil === 'soft');
  return softBanks.length > 0 ? { softBanks } : {};
}
