import { describe, expect, it } from 'vitest';
import {
  conditionsFactor,
  conditionsSentence,
  conditionsUsed,
} from '#domain/forecast/doubt/conditions.ts';
import { usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { stretchOf } from '#domain/schedule/ways.ts';
import { workOf } from '#tests/domain/forecast/smallNetwork.ts';

// US Army TM 5-5420-212-10-1, p. 3-48, table 3-36: hours of a hand-built girder bridge by day 2, 2 3/4 and 3, by night 3,
// 4 and 4 1/2; notes: +20 % unskilled personnel, +30 % inclement weather, +30 % adverse site.
const usual = usualDoubt(workOf([{ id: 'a', minutes: [1, 2, 3] }]));
const all = {
  ...usual,
  weather: { ...usual.weather, on: true },
  training: { ...usual.training, on: true },
  site: { ...usual.site, on: true },
};

describe('additions to the building time', () => {
  it('are the published ones', () => {
    const factors = Object.fromEntries(
      conditionsUsed(usual).map(({ name, factor }) => [name, factor]),
    );
    expect(factors).toMatchObject({ training: 1.2, weather: 1.3, site: 1.3 });
  });

  it('lie by night where the table has them', () => {
    const ratios = [3 / 2, 4 / 2.75, 4.5 / 3];
    const { factor } = conditionsUsed(usual).find(({ name }) => name === 'light')!;
    expect(factor).toBeGreaterThanOrEqual(Math.min(...ratios));
    expect(factor).toBeLessThanOrEqual(Math.max(...ratios));
  });

  // The table does not say whether several are added up (2.75 h x 1.80 = 4.95 h) or multiplied (2.75 h x 1.2 x 1.3 x 1.3
  // = 5.577 h). A tool must say which.
  it('are multiplied, and the sheet says so', () => {
    expect(2.75 * conditionsFactor(all)).toBeCloseTo(5.577, 10);
    expect(conditionsSentence(all)).toBe(
      'Conditions are multiplied: 1.3 x 1.2 x 1.3 = 2.03. In the dark everything takes 1.5 times as long again.',
    );
  });

  // Same manual, end of chapter 3, section III: a smaller party lengthens the build considerably, a larger one does not
  // necessarily shorten it. Minutes never grow with more people, and have a floor.
  it('never grow with more people, and more people than can be used save nothing', () => {
    const need = { anyOf: [], people: { least: 2, usual: 6, most: 8 } };
    const stretches = Array.from({ length: 20 }, (_, k) => stretchOf([need], [k + 1]));
    for (let k = 1; k < stretches.length; k++) {
      expect(stretches[k]!).toBeLessThanOrEqual(stretches[k - 1]!);
    }
    expect(stretches[2]!).toBeGreaterThan(1.5);
    expect(new Set(stretches.slice(7)).size).toBe(1);
  });
});
