import { describe, expect, it } from 'vitest';
import { inches, recommendedLift, sharedLift } from '#domain/kit/liftEquation.ts';

describe('the revised lifting equation', () => {
  // NIOSH publication 94-110, Applications Manual for the Revised Lifting Equation (1994, revised 2021). The constants
  // 23 kg, 25/H, 0.003 and 0.82 + 4.5/D as the Canadian Centre for Occupational Health and Safety prints them; turn and
  // grip from memory.
  it('gives its whole constant for the ideal lift', () => {
    const ideal = { out: 25, height: 75, way: 25, turn: 0, often: 1, grip: 'good' } as const;
    expect(recommendedLift(ideal)).toBeCloseTo(23, 9);
  });

  // Its first example, loading stock: 44 lb, 23 in out, from 15 in up to 63 in, fair grip. Printed with multipliers
  // rounded to two places: 16.3 lb at the start and 14.5 lb at the end, hence the tolerance of 0.4 lb.
  it.each([
    ['start', 15, 16.3, 2.7],
    ['end', 63, 14.5, 3.0],
  ])('gives what its first example prints at the %s', (_, height, pounds, index) => {
    const lift = recommendedLift(
      { out: 23, height, way: 48, turn: 0, often: 1, grip: 'fair' },
      inches,
    );
    expect(Math.abs(lift - pounds)).toBeLessThan(0.4);
    expect(Math.abs(44 / lift - index)).toBeLessThan(0.15);
    // In centimetres and kilograms the same, but for constants that are rounded apart.
    const metric = recommendedLift({
      out: 23 * 2.54,
      height: height * 2.54,
      way: 48 * 2.54,
      turn: 0,
      often: 1,
      grip: 'fair',
    });
    expect(Math.abs(metric / 0.45359237 / lift - 1)).toBeLessThan(0.05);
  });

  it('falls with reach, turn, rate and a poor grip', () => {
    const usual = { out: 40, height: 50, way: 60, turn: 20, often: 0.9, grip: 'fair' } as const;
    const more = [
      { out: 50 },
      { turn: 60 },
      { often: 0.5 },
      { grip: 'poor' as const },
      { height: 20 },
    ];
    for (const other of more) {
      expect(recommendedLift({ ...usual, ...other })).toBeLessThan(recommendedLift(usual));
    }
  });
});

describe('lifting together by the UK guidance', () => {
  // As a training body prints it after HSE L23: two people two thirds of the sum of what each can, three people half.
  it.each([
    [[25, 25], 33],
    [[25, 25, 25], 37.5],
    [[16, 16], 21],
    [[16, 16, 16], 24],
  ])('people who lift %j kg each lift %d kg', (each, together) => {
    expect(Math.abs((sharedLift(each) ?? 0) - together)).toBeLessThan(0.4);
  });

  it('says nothing of four', () => {
    expect(sharedLift([25])).toBe(25);
    expect(sharedLift([25, 25, 25, 25])).toBeNull();
  });
});
