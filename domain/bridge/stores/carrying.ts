import type { Carry, Kit, Part } from '../../kit/kit.ts';
import { recommendedLift } from '../../kit/liftEquation.ts';
import { fewestLifters, teamLift } from '../../kit/teamLift.ts';
import type { Bridge } from '../bridge.ts';
import { partCount } from '../parts.ts';

/** What it takes to carry all of one kind of part by hand. */
export type Carrying = {
  readonly part: string;
  readonly count: number;
  readonly carriers: number;
  /** Kilograms for each carrier. */
  readonly share: number;
  /** Minutes that one team takes for one, there and back; null where the kit says nothing of carrying. */
  readonly minutes: number | null;
  /** Minutes of one team for all, and of all its people. */
  readonly teamMinutes: number | null;
  readonly personMinutes: number | null;
  /** What the published limits say against it. They warn: the manual of the equipment decides. */
  readonly warnings: readonly string[];
};

/** Lifted from low ground, at arm's length of a stooping person, now and then; what one person picks up on site. */
const fromTheGround = { out: 40, height: 30, way: 75, turn: 0, often: 1, grip: 'fair' } as const;

/** Lifting index above which nearly everybody is at risk of a hurt back (NIOSH 94-110). */
const worstIndex = 3;

/** Parts of a bridge that are carried by hand over `walk` metres, in the kit's order. */
export function carrying(kit: Kit, bridge: Bridge, walk: number): Carrying[] {
  return kit.parts
    .filter(({ carriers }) => carriers > 0)
    .map((part) => {
      const count = partCount(part, bridge.bays, bridge.nose);
      const minutes = kit.carry ? circuitMinutes(kit.carry, walk) : null;
      return {
        part: part.name,
        count,
        carriers: part.carriers,
        share: part.mass / part.carriers,
        minutes,
        teamMinutes: minutes === null ? null : minutes * count,
        personMinutes: minutes === null ? null : minutes * count * part.carriers,
        warnings: warningsFor(part, walk),
      };
    })
    .filter(({ count }) => count > 0);
}

/** Minutes for one piece: up, there, down, and back with empty hands. */
export function circuitMinutes({ lift, loaded, set, empty }: Carry, walk: number): number {
  return lift + walk / loaded + set + walk / empty;
}

function warningsFor({ mass, carriers }: Part, walk: number): string[] {
  const warnings: string[] = [];
  const say = (what: string, most: number, wants: number) =>
    warnings.push(
      `${mass} kg by ${carriers}: a team of ${carriers} should ${what} at most ${Math.floor(most)} kg; ${wants} should take it (MIL-STD-1472, from memory).`,
    );
  const carry = { team: 'men', how: 'carry' } as const;
  if (mass > teamLift(carriers)) {
    say('lift', teamLift(carriers), fewestLifters(mass));
  } else if (mass > teamLift(carriers, carry)) {
    say('carry', teamLift(carriers, carry), fewestLifters(mass, carry));
  }
  if (walk > 10 && mass > teamLift(carriers, carry) / 2) {
    warnings.push(
      `Carried ${walk.toFixed(0)} m: the limit is for 10 m; rest on the way or bring it nearer.`,
    );
  }
  if (carriers === 1 && mass > worstIndex * recommendedLift(fromTheGround)) {
    warnings.push(
      `${mass} kg by one person from the ground: a lifting index above ${worstIndex} (NIOSH 94-110).`,
    );
  }
  return warnings;
}
