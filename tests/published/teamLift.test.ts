import { describe, expect, it } from 'vitest';
import { fewestLifters, teamLift } from '#domain/kit/teamLift.ts';

const pound = 0.45359237;
const carry = { team: 'men', how: 'carry' } as const;
const mixed = { team: 'mixed', how: 'lift' } as const;

/** The standard prints rounded kilograms for its pounds, 39.5 for 87 and so on: within three in a thousand. */
function expectPounds(kilograms: number, pounds: number): void {
  expect(Math.abs(kilograms / pound - pounds)).toBeLessThan(0.003 * pounds);
}

describe('lifting by teams', () => {
  // MIL-STD-1472 (E and F), design weight limits: floor to 3 ft 87 lb for men and 44 lb for men and women, carried up
  // to 33 ft 82 and 42 lb; twice that for two, three quarters of it for each more. Quoted from memory; the sums are
  // worked by hand.
  it.each([
    [2, 174],
    [3, 239.25],
    [4, 304.5],
    [6, 435],
    [8, 565.5],
  ])('%d men lift at most %d lb', (people, pounds) => {
    expectPounds(teamLift(people), pounds);
  });

  it.each([
    [1, 82],
    [2, 164],
    [4, 287],
    [6, 410],
    [8, 533],
    [9, 594.5],
  ])('%d men carry at most %d lb', (people, pounds) => {
    expectPounds(teamLift(people, carry), pounds);
  });

  it('six men and women lift at most 220 lb', () => {
    expectPounds(teamLift(6, mixed), 220);
    expectPounds(teamLift(1, { team: 'mixed', how: 'carry' }), 42);
  });

  // FM 5-277 ch. 1, from memory: a panel of 577 lb is carried by six. The standard would have nine carry it.
  it('a panel of 577 lb is more than six should lift or carry, and nine may', () => {
    expect(577 * pound).toBeGreaterThan(teamLift(6));
    expect(577 * pound).toBeGreaterThan(teamLift(6, carry));
    expect(fewestLifters(577 * pound, carry)).toBe(9);
  });
});
