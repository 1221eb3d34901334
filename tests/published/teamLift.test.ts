import { describe, expect, it } from 'vitest';
import { teamLift } from '#domain/kit/teamLift.ts';

const pound = 0.45359237;

describe('lifting by teams', () => {
  // MIL-STD-1472 (E and F), floor to 3 ft, men: 87 lb for one, twice that for two, three quarters for each more. Quoted
  // from memory; the sums are worked by hand. The standard prints 39.5 kg for 87 lb, hence the tolerance.
  it.each([
    [2, 174],
    [3, 239.25],
    [4, 304.5],
    [6, 435],
    [8, 565.5],
  ])('%d people lift at most %d lb', (people, pounds) => {
    expect(Math.abs(teamLift(people) / pound - pounds)).toBeLessThan(0.001 * pounds);
  });

  // FM 5-277 ch. 1, from memory: a panel of 577 lb is carried by six. The standard would not have it.
  it('a panel of 577 lb is more than six should lift', () => {
    expect(577 * pound).toBeGreaterThan(teamLift(6));
  });
});
