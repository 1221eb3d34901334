import type { Kit, LaunchRules } from '../kit/kit.ts';
import { balanceBehind, type Girder } from './balance.ts';
import type { Stage } from './bridge.ts';
import type { Ground } from './ground.ts';
import { launchStages, tailRoom } from './launch.ts';
import { betweenBearings, lengthNeeded } from './reach.ts';
import { type Limit, metres, type Way } from './way.ts';

/**
 * The launch of so many bays over rollers with the shortest nose that holds the balance, or with the nose wished.
 * The front rollers stand behind the near bearing line and the far ones behind the far bearing line, as the kit says.
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
  const girderWith = (nose: number): Girder => ({
    bayLength: kit.bay.length,
    nose,
    noseLength: nose * (kit.nose?.length ?? 0),
    masses: { bay: kit.bay.bare, deck: kit.bay.deck, nose: kit.nose?.mass ?? 0 },
  });
  const impossible = (nose: number, limit: Limit): Way => ({
    girder: girderWith(nose),
    stages: [],
    landsAt,
    room: 0,
    limits: [limit],
  });
  if (wish !== undefined && !(Number.isInteger(wish) && wish >= 0 && wish <= most)) {
    const sentence = `${kit.title} has at most ${most} nose sections and ${wish} are wished: take 0 to ${most}, whole.`;
    return impossible(0, { sentence, of: ['nose'] });
  }

  const spare = bays * kit.bay.length - lengthNeeded(ground, kit);
  /** Front of bay 1 at rest on the far bearing, ahead of the front rollers. */
  const rest = rules.rollers.near + betweenBearings(ground) + kit.bearing.far + spare / 2;
  const tried = wish === undefined ? Array.from({ length: most + 1 }, (_, nose) => nose) : [wish];
  for (const nose of tried) {
    const girder = girderWith(nose);
    const final = rest + girder.noseLength;
    const stages = launchStages({ girder, bays, landsAt, final }, rules);
    if (stages) {
      const room = tailRoom(girder, stages) + rules.vehicleRoom;
      return { girder, stages, landsAt, room, limits: pushLimits(girder, rules, stages) };
    }
  }
  const longest = tried.at(-1) ?? 0;
  return impossible(longest, tips(girderWith(longest), rules, bays, landsAt));
}

/** The balance that decking can reach at best as the tip meets the far rollers, and what would mend it. */
function tips(girder: Girder, rules: LaunchRules, bays: number, tip: number): Limit {
  const balances = Array.from({ length: Math.min(rules.deckEarly, bays) + 1 }, (_, count) => {
    const decked = Array.from({ length: count }, (_, at) => bays - at);
    return balanceBehind(girder, { tip, bays, decked }) ?? 0;
  });
  const best = Math.max(...balances);
  const where = best < 0 ? 'ahead of' : 'behind';
  const sentence = `With ${girder.nose} nose sections, and rear bays decked as far as that helps, the balance would be ${metres(Math.abs(best))} ${where} the front rollers as the tip lands, and the kit wants ${metres(rules.margin)} behind: take a longer nose, more bays at the tail, or a narrower gap.`;
  return { sentence, of: ['nose', 'gap'] };
}

function pushLimits(girder: Girder, rules: LaunchRules, stages: readonly Stage[]): Limit[] {
  const { bay, deck, nose } = girder.masses;
  const heaviest = Math.max(
    ...stages.map(({ bays, decked }) => bays * bay + decked.length * deck + girder.nose * nose),
  );
  if (heaviest <= rules.heaviestPush) {
    return [];
  }
  const tonnes = (kilograms: number) => `${(kilograms / 1000).toFixed(1)} t`;
  const sentence = `The heaviest move pushes ${tonnes(heaviest)} and the kit allows ${tonnes(rules.heaviestPush)}: take fewer bays or a narrower gap.`;
  return [{ sentence, of: ['bays'] }];
}
