import type { Kit, LaunchRules } from '../kit/kit.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { bad, good, type Result } from '../result.ts';
import { balanceBehind, type Girder } from './balance.ts';
import type { Bridge, Stage } from './bridge.ts';
import { floatStages } from './floatOut.ts';
import type { Ground } from './ground.ts';
import { launchStages, tailRoom } from './launch.ts';
import { partsList } from './parts.ts';
import { baysNeeded, betweenBearings, lengthNeeded, loadClassAt, longestFor } from './reach.ts';
import { unknownsOf } from './unknowns.ts';

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
  const refusals: Refusal[] = [];
  const refuse = (sentence: string, of: string[]) => {
    refusals.push(refusal('bridge-impossible', sentence, of));
  };
  const needed = baysNeeded(ground, kit);
  const bays = wish.bays ?? needed;
  const length = bays * kit.bay.length;
  for (const [sentence, of] of lengthLimits(ground, kit, bays, needed)) {
    refuse(sentence, of);
  }

  const launched = kit.launch ? launch(ground, kit, kit.launch, bays, wish.nose) : null;
  const way = launched ?? floatOut(ground, kit, bays);
  if (bays <= kit.bay.most && bays >= needed) {
    for (const [sentence, of] of way.limits) {
      refuse(sentence, of);
    }
    if (ground.roomBehind !== null && way.stages.length > 0 && ground.roomBehind < way.room) {
      refuse(
        `The work needs ${metres(way.room)} of firm ground behind the near bank and there are ${metres(ground.roomBehind)}: clear ${metres(way.room - ground.roomBehind)} more.`,
        ['roomBehind'],
      );
    }
  }
  if (refusals.length > 0) {
    return bad(refusals);
  }

  const spare = length - lengthNeeded(ground, kit);
  return good({
    kit: { name: kit.name, title: kit.title, hash: kitHash, notForUse: kit.notForUse },
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
    stages: way.stages,
    parts: partsList(kit, bays, way.girder.nose),
    unknowns: unknownsOf(ground, way.room),
  });
}

type Limit = readonly [sentence: string, of: string[]];

type Way = {
  readonly girder: Girder;
  readonly stages: Stage[];
  readonly landsAt: number;
  readonly room: number;
  readonly limits: readonly Limit[];
};

function lengthLimits(ground: Ground, kit: Kit, bays: number, needed: number): Limit[] {
  const limits: Limit[] = [];
  const length = bays * kit.bay.length;
  const most = kit.bay.most * kit.bay.length;
  const over = lengthNeeded(ground, kit) - ground.gap;
  if (bays < needed && needed <= kit.bay.most) {
    limits.push([
      `${bays} bays make ${metres(length)}; gap, setbacks and bearings need ${metres(lengthNeeded(ground, kit))}: take at least ${needed} bays.`,
      ['bays'],
    ]);
  }
  if (Math.max(bays, needed) > kit.bay.most) {
    limits.push([
      `The gap of ${metres(ground.gap)} with ${metres(over)} for setbacks and bearings takes ${Math.max(bays, needed)} bays and ${kit.title} has at most ${kit.bay.most} (${metres(most)}): find a gap of ${metres(most - over)} or less, or another kit.`,
      ['gap', 'bays'],
    ]);
    return limits;
  }
  const loadClass = loadClassAt(kit, length) ?? 0;
  if (loadClass < ground.loadClass) {
    const longest = longestFor(kit, ground.loadClass);
    const instead =
      longest === null
        ? 'no length of this kit carries it: ask for less, or take another kit'
        : `it is carried up to ${metres(longest)}, a gap of ${metres(longest - over)}: find a narrower place or ask for less`;
    limits.push([
      `A bridge of ${metres(length)} carries class ${loadClass} and class ${ground.loadClass} is asked: ${instead}.`,
      ['loadClass'],
    ]);
  }
  return limits;
}

function launch(
  ground: Ground,
  kit: Kit,
  rules: LaunchRules,
  bays: number,
  wish: number | undefined,
): Way {
  const landsAt = betweenBearings(ground) + rules.rollers.near + rules.rollers.far;
  const spare = bays * kit.bay.length - lengthNeeded(ground, kit);
  const front = rules.rollers.near + betweenBearings(ground) + kit.bearing.far + spare / 2;
  const most = kit.nose?.most ?? 0;
  const tried = wish === undefined ? Array.from({ length: most + 1 }, (_, nose) => nose) : [wish];
  const girderWith = (nose: number): Girder => ({
    bayLength: kit.bay.length,
    nose,
    noseLength: nose * (kit.nose?.length ?? 0),
    masses: { bay: kit.bay.bare, deck: kit.bay.deck, nose: kit.nose?.mass ?? 0 },
  });
  const base = { landsAt, room: 0, stages: [] };
  if (wish !== undefined && (wish > most || wish < 0)) {
    const limit = `${kit.title} has at most ${most} nose sections and ${wish} are wished: take ${most} or fewer.`;
    return { ...base, girder: girderWith(0), limits: [[limit, ['nose']]] };
  }
  for (const nose of tried) {
    const girder = girderWith(nose);
    // With so long a nose the bridge would be at its bearing before the tip has landed: no launch needs that.
    const stages =
      girder.noseLength + front >= landsAt
        ? launchStages({ girder, bays, landsAt, final: girder.noseLength + front }, rules)
        : null;
    if (stages) {
      const limits = pushLimits(girder, rules, stages);
      return {
        girder,
        stages,
        landsAt,
        room: tailRoom(girder, stages) + rules.vehicleRoom,
        limits,
      };
    }
  }
  const nose = tried.at(-1) ?? 0;
  return {
    ...base,
    girder: girderWith(nose),
    limits: [[tipsSentence(girderWith(nose), rules, bays, landsAt), ['nose', 'gap']]],
  };
}

/** Why no nose (or not the one wished) lands: the balance as the tip would meet the far rollers. */
function tipsSentence(girder: Girder, rules: LaunchRules, bays: number, tip: number): string {
  const early = Math.min(rules.deckEarly, bays);
  const decked = Array.from({ length: early }, (_, at) => bays - at);
  const balance = balanceBehind(girder, { tip, bays, decked }) ?? 0;
  const where = balance < 0 ? 'ahead of' : 'behind';
  return `With ${girder.nose} nose sections and the ${early} rear bays decked the balance would be ${metres(Math.abs(balance))} ${where} the front rollers as the tip lands, and the kit wants ${metres(rules.margin)} behind: take a longer nose, more bays at the tail, or a narrower gap.`;
}

function pushLimits(girder: Girder, rules: LaunchRules, stages: readonly Stage[]): Limit[] {
  const heaviest = Math.max(
    ...stages.map(
      ({ bays, decked }) =>
        bays * girder.masses.bay +
        decked.length * girder.masses.deck +
        girder.nose * girder.masses.nose,
    ),
  );
  if (heaviest <= rules.heaviestPush) {
    return [];
  }
  const tonnes = (kilograms: number) => `${(kilograms / 1000).toFixed(1)} t`;
  return [
    [
      `The heaviest move pushes ${tonnes(heaviest)} and the kit allows ${tonnes(rules.heaviestPush)}: take fewer bays or a narrower gap.`,
      ['bays'],
    ],
  ];
}

function floatOut(ground: Ground, kit: Kit, bays: number): Way {
  const lot = kit.boom?.lot ?? 1;
  const spare = bays * kit.bay.length - lengthNeeded(ground, kit);
  const landsAt = betweenBearings(ground);
  const final = landsAt + kit.bearing.far + spare / 2;
  return {
    girder: {
      bayLength: kit.bay.length,
      nose: 0,
      noseLength: 0,
      masses: { bay: kit.bay.bare, deck: kit.bay.deck, nose: 0 },
    },
    stages: floatStages({ bays, bayLength: kit.bay.length, lot, landsAt, final }),
    landsAt,
    room: lot * kit.bay.length + (kit.boom?.room ?? 0),
    limits: [],
  };
}

/** Removes the dust that sums of decimal lengths leave; a tenth of a millimetre is finer than anybody measures. */
function tidy(length: number): number {
  return Math.round(length * 1e4) / 1e4;
}

function metres(length: number): string {
  return `${length.toFixed(1)} m`;
}
