import type { Kit } from './kit.ts';

/** Who lifts, and how: from the floor to 0.9 m, or carrying up to 10 m. */
export type Lift = { readonly team: 'men' | 'mixed'; readonly how: 'lift' | 'carry' };

/**
 * What one person handles at most by the design weight limits of MIL-STD-1472 (E and F; quoted from memory): 87 and
 * 44 lb lifted to 3 ft, 82 and 42 lb carried up to 33 ft. Kilograms as the standard rounds them.
 */
const onePerson = {
  men: { lift: 39.5, carry: 37.2 },
  mixed: { lift: 20, carry: 19 },
} as const;

/**
 * Heaviest load that so many people should handle together, in kilograms, evenly shared: twice one person's for two,
 * and three quarters of it for each further one (same source). Men lifting unless said.
 */
export function teamLift(
  people: number,
  { team, how }: Lift = { team: 'men', how: 'lift' },
): number {
  const one = onePerson[team][how];
  return people < 2 ? one * people : one * (2 + 0.75 * (people - 2));
}

/** Fewest people who should handle so many kilograms together by the same rule. */
export function fewestLifters(kilograms: number, lift?: Lift): number {
  let people = 1;
  while (teamLift(people, lift) < kilograms) {
    people += 1;
  }
  return people;
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
