import { describe, expect, it } from 'vitest';
import {
  type Effort,
  fahrenheit,
  heatFactor,
  wbgtOutdoors,
  workRest,
} from '#domain/forecast/doubt/heat.ts';

// Work and rest, minutes in each hour, after TB MED 507 (irwin.amedd.army.mil/pages/wbgt.htm): lowest and highest
// wet-bulb globe temperature of each category in degrees Fahrenheit, then easy, moderate and hard work. 60: no limit.
// biome-ignore format: one category a line, as on the card
const card = [
  [78, 81.9, [60, 60, 40]],
  [82, 84.9, [60, 50, 30]],
  [85, 87.9, [60, 40, 30]],
  [88, 89.9, [60, 30, 20]],
  [90, 110, [50, 20, 10]],
] as const;
const efforts: Effort[] = ['easy', 'moderate', 'hard'];

describe('work and rest in the heat', () => {
  it.each(card)('follow the card from %d to %d degrees', (from, to, minutes) => {
    for (const [k, effort] of efforts.entries()) {
      for (const wbgt of [from, to]) {
        expect(workRest(wbgt, effort)).toEqual({ work: minutes[k], rest: 60 - minutes[k]! });
      }
    }
  });

  it('know no limit below the card', () => {
    for (const effort of efforts) expect(workRest(77.9, effort)).toEqual({ work: 60, rest: 0 });
  });

  // The same card: body armour in a humid climate adds 5 degrees; full protective dress 10 at easy and 20 at moderate
  // or hard work.
  it('count armour and full protective dress as so many degrees more', () => {
    expect(workRest(80, 'moderate', 'armour')).toEqual(workRest(85, 'moderate'));
    expect(workRest(70, 'hard', 'sealed')).toEqual(workRest(90, 'hard'));
    expect(workRest(79.9, 'easy', 'sealed')).toEqual(workRest(89.9, 'easy'));
  });

  // 50/10 1.2; 40/20 1.5; 30/30 2.0; 20/40 3.0; 10/50 6.0: sixty over the minutes at work.
  it.each([
    [50, 1.2],
    [40, 1.5],
    [30, 2],
    [20, 3],
    [10, 6],
  ])('with %d minutes at work in the hour everything takes %d times as long', (work, factor) => {
    expect(heatFactor({ work, rest: 60 - work })).toBeCloseTo(factor, 10);
  });

  // Outdoors 0.7 wet + 0.2 globe + 0.1 air: wet 80, globe 110, air 95 make 87.5 degrees, category 3.
  it('take the temperature from three thermometers', () => {
    const wbgt = wbgtOutdoors(80, 110, 95);
    expect(wbgt).toBeCloseTo(87.5, 10);
    expect(workRest(wbgt, 'moderate')).toEqual({ work: 40, rest: 20 });
  });

  it('are found from degrees Celsius too, right on the edge of a row', () => {
    for (const [from] of card) expect(fahrenheit((from - 32) / 1.8)).toBe(from);
  });
});
