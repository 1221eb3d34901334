import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pileOpenings } from '#client/drawing/openings.ts';

const twenty = fc.array(fc.double({ min: 100, max: 900, noNaN: true }), {
  minLength: 20,
  maxLength: 20,
});
const asked = fc.option(fc.double({ min: 0, max: 1200, noNaN: true }));
const columns = fc.integer({ min: 8, max: 40 });

describe('openings as dots', () => {
  it('are all there, each in its own place, inside the strip', () => {
    fc.assert(
      fc.property(twenty, asked, columns, (openings, by, count) => {
        const { dots } = pileOpenings(openings, by, count);
        expect(dots).toHaveLength(20);
        expect(new Set(dots.map(({ column, row }) => `${column}.${row}`)).size).toBe(20);
        for (const { column } of dots) {
          expect(column).toBeGreaterThanOrEqual(0);
          expect(column).toBeLessThan(count);
        }
      }),
    );
  });

  it('stand on their true side of the post', () => {
    fc.assert(
      fc.property(
        twenty,
        fc.double({ min: 0, max: 1200, noNaN: true }),
        columns,
        (openings, by, count) => {
          const { dots, post } = pileOpenings(openings, by, count);
          const late = openings.filter((opening) => opening > by).length;
          expect(dots.filter((dot) => dot.late)).toHaveLength(late);
          if (post === null) return;
          for (const dot of dots) expect(dot.column >= post).toBe(dot.late);
        },
      ),
    );
  });

  it('pile up without holes', () => {
    fc.assert(
      fc.property(twenty, asked, columns, (openings, by, count) => {
        const { dots, highest } = pileOpenings(openings, by, count);
        for (const { column, row } of dots) {
          const below = dots.filter((dot) => dot.column === column && dot.row < row);
          expect(below).toHaveLength(row);
          expect(row).toBeLessThan(highest);
        }
      }),
    );
  });

  it('leave a time asked for that is far away to an arrow', () => {
    const openings = Array.from({ length: 20 }, (_, index) => 300 + index);
    expect(pileOpenings(openings, 1200, 16)).toMatchObject({ post: null, askedOff: 'after' });
    expect(pileOpenings(openings, 0, 16)).toMatchObject({ post: null, askedOff: 'before' });
    expect(pileOpenings(openings, null, 16)).toMatchObject({ post: null, askedOff: null });
  });
});
