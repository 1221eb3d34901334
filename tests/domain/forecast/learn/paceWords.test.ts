import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crewPaces, paceWords } from '#domain/forecast/learn/paceWords.ts';
import { crewedWork } from '../crewedWork.ts';

describe('a pace in words', () => {
  it.each([
    [1.2, '6 min for each 5 planned'],
    [1.4, '7 min for each 5 planned'],
    [0.8, '4 min for each 5 planned'],
    [1.1, '11 min for each 10 planned'],
    [1.3, '13 min for each 10 planned'],
    [1, 'as planned'],
    [1.03, 'as planned'],
    [0.97, 'as planned'],
  ])('of %d is "%s"', (factor, words) => {
    expect(paceWords(factor)).toBe(words);
  });

  it('is never more than half a minute in ten off', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 4, noNaN: true }), (factor) => {
        const words = paceWords(factor);
        const [, took, planned] = /^(\d+) min for each (\d+) planned$/.exec(words) ?? [
          '',
          '1',
          '1',
        ];
        expect(Math.abs(Number(took) / Number(planned) - factor)).toBeLessThanOrEqual(0.0501);
      }),
    );
  });
});

describe('the pace of the crews', () => {
  const { crews } = crewedWork(['left', 'right']);
  const pace = {
    crews: ['left', 'right', 'gone'],
    mean: [Math.log(1.1), Math.log(1.2), 0, 0.3],
    covariance: [0.01, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0.04, 0, 0, 0, 0, 0.04],
  };

  it('is day and crew together, with four chances in five between its bounds', () => {
    const [left, right] = crewPaces(pace, crews);
    expect(left!.factor).toBeCloseTo(1.32, 10);
    expect(left!.words).toBe('13 min for each 10 planned');
    // Deviations of the logarithm 0.1 and sqrt(0.05); nine tenths lie below 1.2816 of them.
    expect(left!.to / left!.factor).toBeCloseTo(Math.exp(0.12816), 4);
    expect(right!.factor / right!.from).toBeCloseTo(Math.exp(1.2816 * Math.sqrt(0.05)), 4);
  });

  it('leaves out crews of which nothing is known', () => {
    expect(
      crewPaces({ crews: ['left'], mean: [0, 0], covariance: [0, 0, 0, 0] }, crews),
    ).toHaveLength(1);
  });
});
