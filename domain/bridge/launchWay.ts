import type { Kit, LaunchRules } from '../kit/kit.ts';
import type { Girder } from './balance.ts';
import type { Stage } from './bridge.ts';
import type { Ground } from './ground.ts';
import { betweenBearings, lengthNeeded } from './reach.ts';
import { freeingBalance } from './stages/freeingBalance.ts';
import { type Launch, launchStages, tailRoom } from './stages/launch.ts';
import { leastRoom } from './stages/leastRoom.ts';
import { type Limit, metres, type Way } from './way.ts';

/**
 * The launch of so many bays over rollers with the shortest nose that holds the balance and fits into the room behind,
 * or with the nose wished; with weights on the tail only where no nose alone will do. The front rollers stand behind
 * the near bearing line and the far ones behind the far bearing line, as the kit says.
 */
export function launchWay(
  ground: Ground,
  kit: Kit,
  rules: LaunchRules,
  bays: number,
  wish: number | undefined,
): Way {
  const landsAt = betweenBearings(ground) + rules.rollers.near + rules.rollers.far;
  const most = kit.nose?.most ?? 0;
  const spare = bays * kit.bay.length - lengthNeeded(ground, kit);
  /** Front of bay 1 at rest on the far bearing, ahead of the front rollers. */
  const rest = rules.rollers.near + betweenBearings(ground) + kit.bearing.far + spare / 2;
  const launchWith = (nose: number): Launch => {
    const girder = girderWith(kit, nose);
    const room = ground.roomBehind === null ? null : ground.roomBehind - rules.vehicleRoom;
    return { girder, bays, landsAt, final: rest + girder.noseLength, room };
  };
  const impossible = (limit: Limit): Way => ({
    girder: girderWith(kit, 0),
    stages: [],
    landsAt,
    room: 0,
    limits: [limit],
  });
  if (wish !== undefined && !(Number.isInteger(wish) && wish >= 0 && wish <= most)) {
    const sentence = `${kit.title} has at most ${most} nose sections and ${wish} are wished: take 0 to ${most}, whole.`;
    return impossible({ sentence, of: ['nose'] });
  }

  const noses = wish === undefined ? Array.from({ length: most + 1 }, (_, nose) => nose) : [wish];
  const cramped: Launch[] = [];
  let nodding: Launch | null = null;
  for (const means of meansOf(rules)) {
    for (const nose of noses) {
      const launch = launchWith(nose);
      const launched = launchStages(launch, means);
      if (launched.ok) {
        const { stages } = launched;
        const room = tailRoom(launch.girder, stages) + rules.vehicleRoom;
        const limits = pushLimits(launch.girder, rules, stages);
        return { girder: launch.girder, stages, landsAt, room, limits };
      }
      if (launched.binds === 'room') {
        cramped.push(launch);
      } else if (launched.binds === 'far-balance') {
        nodding ??= launch;
      }
    }
  }
  if (cramped.length > 0) {
    const needs = Math.min(...cramped.map((launch) => leastRoom(launch, rules)));
    return impossible(tooShort(needs + rules.vehicleRoom, ground.roomBehind ?? 0));
  }
  if (nodding) {
    return impossible(nods(nodding));
  }
  return impossible(freeingBalance(launchWith, noses.at(-1) ?? 0, rules, most));
}

/** First without weights on the tail, which have to be carried on and off; then with those of the kit. */
function meansOf(rules: LaunchRules): LaunchRules[] {
  const { counterweight, ...without } = rules;
  return counterweight ? [without, rules] : [without];
}

function girderWith(kit: Kit, nose: number): Girder {
  return {
    bayLength: kit.bay.length,
    nose,
    noseLength: nose * (kit.nose?.length ?? 0),
    masses: { bay: kit.bay.bare, deck: kit.bay.deck, nose: kit.nose?.mass ?? 0 },
  };
}

function tooShort(needs: number, has: number): Limit {
  const sentence = `The work needs ${metres(needs)} of firm ground behind the near bank, however it is staged, and there are ${metres(has)}: clear ${metres(needs - has)} more.`;
  return { sentence, of: ['roomBehind'] };
}

function nods({ girder }: Launch): Limit {
  const sentence = `Once landed, the ${girder.nose} nose sections that the landing takes would tip the bridge over the far rollers before they can come off: take more bays at the tail, or a lighter nose.`;
  return { sentence, of: ['nose', 'bays'] };
}

function pushLimits(girder: Girder, rules: LaunchRules, stages: readonly Stage[]): Limit[] {
  const { bay, deck, nose } = girder.masses;
  const heaviest = Math.max(
    ...stages.map(
      ({ bays, decked, counterweight = 0 }) =>
        bays * bay + decked.length * deck + girder.nose * nose + counterweight,
    ),
  );
  if (heaviest <= rules.heaviestPush) {
    return [];
  }
  const tonnes = (kilograms: number) => `${(kilograms / 1000).toFixed(1)} t`;
  const sentence = `The heaviest move pushes ${tonnes(heaviest)} and the kit allows ${tonnes(rules.heaviestPush)}: take fewer bays or a narrower gap.`;
  return [{ sentence, of: ['bays'] }];
}
