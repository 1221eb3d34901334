import { describe, expect, it } from 'vitest';
import { fillTable, lookUp, tableSize } from '#domain/forecast/drawTable.ts';
import { quantile, variance } from '#domain/forecast/spread.ts';
import { expectedMinutes } from '#domain/tasks/expected.ts';
import { estimate } from './smallNetwork.ts';

const estimates = [
  [0, 1, 2],
  [2, 3, 10],
  [4, 4, 10],
  [3, 9, 9],
  [6, 9, 18],
  [0, 1, 100],
] as const;

/** Numbers spread evenly over all 32-bit ones: sums over them are integrals without sampling error. */
const even = 2 ** 18;

function numberAt(k: number): number {
  return (((k + 0.5) * 2 ** 32) / even) | 0;
}

describe.each(['pert', 'triangular'] as const)('the table of draws as %s', (shape) => {
  describe.each(estimates)('for %d, %d, %d', (...points) => {
    const minutes = estimate(points);
    const range = minutes.slow - minutes.quick;
    const table = new Float64Array(tableSize);
    fillTable(table, 0, shape, minutes);
    const draw = (bits: number) => minutes.quick + range * lookUp(table, 0, bits);
    const sd = Math.sqrt(variance(shape, minutes));

    it('keeps mean and deviation far inside four standard errors of two million draws', () => {
      let sum = 0;
      let squares = 0;
      for (let k = 0; k < even; k++) {
        const value = draw(numberAt(k));
        sum += value;
        squares += value * value;
      }
      const own = sum / even;
      const standardError = sd / Math.sqrt(2_000_000);
      expect(Math.abs(own - expectedMinutes(minutes, shape))).toBeLessThan(0.1 * 4 * standardError);
      const ownDeviation = Math.sqrt(squares / even - own * own);
      expect(Math.abs(ownDeviation - sd)).toBeLessThan(4 * Math.SQRT1_2 * standardError);
    });

    it('follows the quantile function closely between one in a thousand and its mirror', () => {
      for (let k = 1; k < 1000; k++) {
        const share = k / 1000;
        const drawn = draw((share * 2 ** 32) | 0);
        expect(Math.abs(drawn - quantile(shape, minutes, share))).toBeLessThan(2e-4 * range);
      }
    });

    it('never leaves quick to slow and never falls as the number rises', () => {
      let before = minutes.quick;
      let worstFall = 0;
      for (let k = 0; k < even; k++) {
        const value = draw(numberAt(k));
        worstFall = Math.max(worstFall, before - value);
        before = value;
      }
      expect(worstFall).toBeLessThanOrEqual(1e-12 * range);
      expect(before).toBeLessThanOrEqual(minutes.slow);
      expect(draw(0)).toBeCloseTo(minutes.quick, 10);
      expect(draw(-1)).toBeCloseTo(minutes.slow, 10);
    });
  });
});
