import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadApart } from '#client/drawing/spreadApart.ts';

describe('labels that are spread apart', () => {
  it('stay where they want to be when there is room', () => {
    expect(spreadApart([10, 50, 90], 20, 0, 100)).toEqual([10, 50, 90]);
  });

  it('share the way when two want the same place', () => {
    expect(spreadApart([50, 50], 20, 0, 100)).toEqual([40, 60]);
  });

  it('are moved in from the edges', () => {
    expect(spreadApart([0, 0, 100, 100], 10, 5, 95)).toEqual([5, 15, 85, 95]);
  });

  it('are none when there are none', () => {
    expect(spreadApart([], 10, 0, 100)).toEqual([]);
  });

  it('keep their order and their gap, and lie inside wherever they fit', () => {
    const wishes = fc
      .array(fc.double({ min: 0, max: 500, noNaN: true }), { maxLength: 12 })
      .map((some) => some.toSorted((one, other) => one - other));
    fc.assert(
      fc.property(wishes, fc.integer({ min: 1, max: 60 }), (at, gap) => {
        const places = spreadApart(at, gap, 0, 500);
        for (const [index, place] of places.entries()) {
          expect(place).toBeGreaterThanOrEqual(-1e-6);
          if (index > 0) expect(place - places[index - 1]!).toBeGreaterThanOrEqual(gap - 1e-6);
        }
        if (gap * (at.length - 1) <= 500) {
          expect(places.at(-1) ?? 0).toBeLessThanOrEqual(500 + 1e-6);
        }
      }),
    );
  });
});
