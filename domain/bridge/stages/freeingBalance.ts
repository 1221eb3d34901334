import type { LaunchRules } from '../../kit/kit.ts';
import { balanceBehind } from '../balance.ts';
import { type Limit, metres } from '../way.ts';
import { deckings } from './holding.ts';
import { type Launch, launchStages } from './launch.ts';

/**
 * Why a launch tips with the longest nose there is, and each thing that would free it by itself: more nose sections,
 * weights on the tail, more rear bays decked before the tip lands, more bays behind.
 */
export function freeingBalance(
  launchWith: (nose: number) => Launch,
  nose: number,
  rules: LaunchRules,
  most: number,
): Limit {
  const launch = launchWith(nose);
  const best = bestBalance(launch, rules);
  const where = best < 0 ? 'ahead of' : 'behind';
  const ways = [
    moreNose(launchWith, nose, rules, most),
    weights(launch, rules),
    moreDecks(launch, rules),
    moreBays(launch, rules),
  ].filter((way) => way !== null);
  const sentence = `With ${nose} nose sections, and rear bays decked as far as that helps, the balance would be ${metres(Math.abs(best))} ${where} the front rollers as the tip lands, and the kit wants ${metres(rules.margin)} behind: ${[...ways, 'or find a narrower gap'].join('; ')}.`;
  return { sentence, of: ['nose', 'gap'] };
}

/** The balance that decking can reach at best as the tip meets the far rollers. */
function bestBalance({ girder, bays, landsAt: tip }: Launch, rules: LaunchRules): number {
  return Math.max(
    ...deckings(bays, [], rules.deckEarly).map(
      (decked) => balanceBehind(girder, { tip, bays, decked }) ?? 0,
    ),
  );
}

function holds(launch: Launch, rules: LaunchRules): boolean {
  return launchStages({ ...launch, room: null }, rules).ok;
}

/** More sections than this would be another kit. */
const fewMore = 6;

function moreNose(
  launchWith: (nose: number) => Launch,
  nose: number,
  rules: LaunchRules,
  most: number,
): string | null {
  for (let more = 1; more <= fewMore; more += 1) {
    if (holds(launchWith(nose + more), rules)) {
      const words = more === 1 ? 'one more nose section' : `${more} more nose sections`;
      const has = nose + more > most ? ` (the kit has ${most})` : '';
      return `take ${words}${has}`;
    }
  }
  return null;
}

/** The lever: so many kilograms at the tail bring the centre back to the margin. */
function weights(launch: Launch, rules: LaunchRules): string | null {
  const { girder, bays, landsAt: tip } = launch;
  const arm = girder.noseLength + bays * girder.bayLength - tip - rules.margin;
  if (arm <= 0) {
    return null;
  }
  const wanted = deckings(bays, [], rules.deckEarly).map((decked) => {
    const balance = balanceBehind(girder, { tip, bays, decked }) ?? 0;
    const { bay, deck, nose } = girder.masses;
    const mass = bays * bay + decked.length * deck + girder.nose * nose;
    return (mass * (rules.margin - balance)) / arm;
  });
  return `set ${Math.ceil(Math.min(...wanted))} kg on the tail`;
}

function moreDecks(launch: Launch, rules: LaunchRules): string | null {
  for (let early = rules.deckEarly + 1; early <= launch.bays; early += 1) {
    if (holds(launch, { ...rules, deckEarly: early })) {
      return `deck ${early} rear bays early (the kit lets ${rules.deckEarly}) and leave those in front bare`;
    }
  }
  return null;
}

function moreBays(launch: Launch, rules: LaunchRules): string | null {
  for (let more = 1; more <= fewMore; more += 1) {
    if (holds({ ...launch, bays: launch.bays + more }, rules)) {
      return `take ${more === 1 ? 'one more bay' : `${more} more bays`} at the tail`;
    }
  }
  return null;
}
