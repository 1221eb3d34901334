import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedMinutes, plannedSeconds } from '#domain/tasks/expected.ts';

describe('Expected minutes', () => {
  // Worked out by hand from the formulas.
  it('weigh likely four times under PERT-beta and once under triangular', () => {
    const minutes = { quick: 2, likely: 3, slow: 10 };
    expect(expectedMinutes(minutes, 'pert')).toBe(4);
    expect(expectedMinutes(minutes, 'triangular')).toBe(5);
  });

  it('are likely itself where that alone is given, and never outside quick and slow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1e3, noNaN: true }),
        fc.double({ min: 0, max: 1e3, noNaN: true }),
        fc.constantFrom('pert' as const, 'triangular' as const),
        (quick, more, most, shape) => {
          expect(expectedMinutes({ quick, likely: quick, slow: quick }, shape)).toBe(quick);
          const minutes = { quick, likely: quick + more, slow: quick + more + most };
          const expected = expectedMinutes(minutes, shape);
          expect(expected).toBeGreaterThanOrEqual(quick - 1e-6);
          expect(expected).toBeLessThanOrEqual(minutes.slow + 1e-6);
        },
      ),
    );
  });

  it('become whole seconds, at least one where there is any work', () => {
    expect(plannedSeconds({ quick: 1, likely: 1, slow: 1 }, 'pert', 1.51)).toBe(91);
    expect(plannedSeconds({ quick: 0, likely: 0.001, slow: 0.001 }, 'pert', 1)).toBe(1);
    expect(plannedSeconds({ quick: 0, likely: 0, slow: 0 }, 'pert', 1)).toBe(0);
  });
});
