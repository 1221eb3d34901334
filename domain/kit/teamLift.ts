import type { Kit } from './kit.ts';

/** What one person lifts from the floor to 0.9 m at most by the standard's design limits: 87 lb. Kilograms. */
const onePerson = 39.5;

/**
 * Heaviest load that so many people should lift together from the floor to 0.9 m, in kilograms, evenly shared: twice
 * one person's for two, and three quarters of it for each further lifter. MIL-STD-1472 (design weight limits, men),
 * quoted from memory.
 */
export function teamLift(people: number): number {
  return people < 2 ? onePerson * people : onePerson * (2 + 0.75 * (people - 2));
}

/**
 * A sentence for each part that is heavier than its carriers should lift. Real bridging exceeds the standard here and
 * there, so this warns and never refuses a kit.
 */
export function liftNotes(kit: Kit): string[] {
  return kit.parts
    .filter(({ mass, carriers }) => carriers > 0 && mass > teamLift(carriers))
    .map(({ name, mass, carriers }) => {
      const most = Math.floor(teamLift(carriers));
      return `${name}: ${mass} kg by ${carriers} people is more than the ${most} kg that a team of ${carriers} should lift by hand (MIL-STD-1472, from memory).`;
    });
}
