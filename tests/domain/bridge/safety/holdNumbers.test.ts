import { describe, expect, it } from 'vitest';
import { holdNumbers } from '#domain/bridge/safety/holdNumbers.ts';
import { waterRescue } from '#domain/bridge/safety/ringBuoys.ts';
import { bridgeOver, heron, larchFord } from '../../kit/heronKit.ts';

describe('the numbers for a hold', () => {
  it('are the margin of the move and what the kit asks for, the wind and the load on the rollers', () => {
    const numbers = holdNumbers(bridgeOver(31), heron, { ...larchFord, wind: 4 });
    expect(numbers).toHaveLength(7);
    expect(numbers[4]).toMatchObject({
      stage: 5,
      bays: 11,
      decked: 4,
      wanted: 2,
      windMost: 12,
      wind: 4,
    });
    expect(numbers[4]?.over).toBeCloseTo(0.338, 3);
    expect(numbers.every(({ over }) => over > 0)).toBe(true);
    // No line of rollers carries more than the whole bridge weighs, 18.13 t.
    expect(Math.max(...numbers.map((one) => one.rollerKilonewtons))).toBeLessThan(18.13 * 9.81);
  });

  it('say nothing of wind where nobody measured it', () => {
    expect(holdNumbers(bridgeOver(31), heron, larchFord)[0]?.wind).toBeNull();
  });
});

describe('rescue over water', () => {
  it('is not asked for where there is none to cross', () => {
    expect(waterRescue(0)).toBeNull();
  });
});
