import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Measure } from '#domain/tasks/hold.ts';
import { faultInWords, verdictOn } from '#domain/tasks/measured.ts';

const wind: Measure = { key: 'wind', name: 'wind', unit: 'm/s', most: 12, soft: { most: 8 } };
const pins: Measure = { key: 'pins', name: 'every pin home', unit: 'yes' };

describe('the verdict on a value', () => {
  it.each([
    [wind, 8, 'good'],
    [wind, 8.1, 'outside'],
    [wind, 12, 'outside'],
    [wind, 12.1, 'beyond'],
    [wind, undefined, 'missing'],
    [wind, Number.NaN, 'missing'],
    [wind, true, 'missing'],
    [{ ...wind, optional: true as const }, undefined, 'good'],
    [{ ...wind, optional: true as const }, 13, 'beyond'],
    [pins, true, 'good'],
    [pins, false, 'no'],
    [pins, undefined, 'missing'],
    [pins, 1, 'missing'],
  ])('of %j as %s is %s', (measure, value, verdict) => {
    expect(verdictOn(measure, value)).toBe(verdict);
  });

  it('never gets worse towards the middle of nested ranges', () => {
    const order = ['good', 'outside', 'beyond'];
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: -200, max: 200, noNaN: true }),
        (inner, more, value) => {
          const measure: Measure = {
            key: 'sag',
            name: 'sag',
            unit: 'mm',
            least: -inner - more,
            most: inner + more,
            soft: { least: -inner, most: inner },
          };
          const at = (read: number) => order.indexOf(verdictOn(measure, read));
          expect(at(value / 2)).toBeLessThanOrEqual(at(value));
        },
      ),
    );
  });
});

describe('a fault in words', () => {
  it('says the value, the limit or the range, and the unit', () => {
    expect(faultInWords(wind, 14)).toBe('wind is 14 m/s, allowed is at most 12 m/s');
    expect(faultInWords(wind, 9)).toBe('wind is 9 m/s, ought to be at most 8 m/s');
    expect(faultInWords(pins, false)).toBe('every pin home is not so');
  });
});
