/** A lift by one person with both hands. Lengths in the unit of the measures used, degrees. */
export type OneLift = {
  /** From between the ankles out to the hands. */
  readonly out: number;
  /** Height of the hands at the start. */
  readonly height: number;
  /** Way up or down. */
  readonly way: number;
  /** Turn of the body. */
  readonly turn: number;
  /** How often and how long, as a factor of the table; 1 for lifts now and then. */
  readonly often: number;
  readonly grip: 'good' | 'fair' | 'poor';
};

/** The constants of the equation as printed for one system of units: they are rounded apart, not converted. */
type Measures = {
  readonly most: number;
  readonly reach: number;
  readonly knuckle: number;
  readonly slope: number;
  readonly way: number;
};

/** Centimetres and kilograms. */
const centimetres: Measures = { most: 23, reach: 25, knuckle: 75, slope: 0.003, way: 4.5 };

/** Inches and pounds. */
export const inches: Measures = { most: 51, reach: 10, knuckle: 30, slope: 0.0075, way: 1.8 };

/**
 * Recommended weight limit of the revised lifting equation (NIOSH publication 94-110, 1994, revised 2021), in the
 * measures given: a constant of 23 kg or 51 lb times factors for reach 25/H, height 1 - 0.003 |V - 75|, way
 * 0.82 + 4.5/D, turn 1 - 0.0032 A, frequency and grip. For one person only: it says nothing of teams.
 */
export function recommendedLift(
  { out, height, way, turn, often, grip }: OneLift,
  { most, reach, knuckle, slope, way: wayFactor }: Measures = centimetres,
): number {
  const factors = [
    Math.min(1, reach / out),
    1 - slope * Math.abs(height - knuckle),
    Math.min(1, 0.82 + wayFactor / way),
    1 - 0.0032 * turn,
    often,
    // Low hands lose by a fair grip too.
    grip === 'good' ? 1 : grip === 'poor' ? 0.9 : height < knuckle ? 0.95 : 1,
  ];
  return factors.reduce((limit, factor) => limit * factor, most);
}

/**
 * What two or three people lift together by the guidance of the UK regulator (L23, as training bodies quote it): two
 * thirds of the sum of what each can for two, half of it for three; kilograms. Null for other numbers of people, of
 * which it says nothing.
 */
export function sharedLift(each: readonly number[]): number | null {
  const sum = each.reduce((all, kilograms) => all + kilograms, 0);
  switch (each.length) {
    case 1:
      return sum;
    case 2:
      return (sum * 2) / 3;
    case 3:
      return sum / 2;
    default:
      return null;
  }
}
