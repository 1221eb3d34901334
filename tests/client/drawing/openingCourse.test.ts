import { describe, expect, it } from 'vitest';
import { type Look, layCourse, lookAt } from '#client/drawing/openingCourse.ts';

const look = (at: number, late: number, more: Partial<Look> = {}): Look => ({
  at,
  early: late - 40,
  even: late - 25,
  late,
  sure: late,
  ...more,
});
const size = { width: 300, mark: 40 };

/** The points of a path, as drawn. */
const points = (path: string): [number, number][] =>
  [...path.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

describe('the course of the forecast', () => {
  const looks = [look(-10, 290), look(60, 300), look(90, 330)];
  const laid = layCourse(looks, [], 310, 120, size);

  it('runs from the first look down to now', () => {
    expect(laid.clock).toEqual([-10, 120]);
    expect(laid.y(-10)).toBe(0);
    expect(laid.y(120)).toBe(laid.height);
  });

  it('holds each forecast until the next is made, and the last until now', () => {
    expect(points(laid.sure)).toEqual(
      [
        [290, -10],
        [290, 60],
        [300, 60],
        [300, 90],
        [330, 90],
        [330, 120],
      ].map(([opening, at]) => [
        expect.closeTo(laid.x(opening!), 0),
        expect.closeTo(laid.y(at!), 0),
      ]),
    );
  });

  it('closes the band over four in five openings', () => {
    const band = points(laid.band);
    expect(laid.band.endsWith('Z')).toBe(true);
    expect(band).toHaveLength(12);
    expect(band[0]).toEqual([expect.closeTo(laid.x(250), 0), 0]);
    expect(band.at(-1)).toEqual([expect.closeTo(laid.x(290), 0), 0]);
  });

  it('has the post on its true side of every line', () => {
    expect(laid.post).toBeGreaterThan(laid.x(300));
    expect(laid.post).toBeLessThan(laid.x(330));
    expect(laid.askedOff).toBeNull();
  });

  it('keeps all inside its width', () => {
    for (const [across] of [...points(laid.band), ...points(laid.sure)]) {
      expect(across).toBeGreaterThanOrEqual(0);
      expect(across).toBeLessThanOrEqual(300);
    }
  });

  it('only points at a time asked for that lies far off', () => {
    expect(layCourse(looks, [], 900, 120, size)).toMatchObject({ post: null, askedOff: 'after' });
    expect(layCourse(looks, [], 10, 120, size)).toMatchObject({ post: null, askedOff: 'before' });
    expect(layCourse(looks, [], null, 120, size)).toMatchObject({ post: null, askedOff: null });
  });

  it('grows until every turn has a mark of its own that can be touched', () => {
    const turns = Array.from({ length: 20 }, (_, k) => ({ at: 60 + k / 10 }));
    const busy = layCourse(looks, turns, 310, 120, size);
    expect(busy.height).toBeGreaterThanOrEqual(800);
    const marks = busy.turns.map(({ mark }) => mark);
    for (const [index, mark] of marks.slice(1).entries()) {
      expect(mark - marks[index]!).toBeGreaterThanOrEqual(40 - 1e-6);
    }
    expect(busy.turns[0]!.line).toBeCloseTo(busy.y(60), 6);
  });

  it('stands for one look alone', () => {
    const one = layCourse([look(5, 200)], [], null, 5, size);
    expect(points(one.sure)).toHaveLength(2);
    expect(one.height).toBeGreaterThan(0);
    expect(one.band).not.toContain('NaN');
  });
});

describe('what was forecast at a moment', () => {
  const looks = [look(0, 290), look(60, 300)];
  it('is the last look before it, or the first of all', () => {
    expect(lookAt(looks, 59)).toBe(looks[0]);
    expect(lookAt(looks, 60)).toBe(looks[1]);
    expect(lookAt(looks, -5)).toBe(looks[0]);
    expect(lookAt([], 5)).toBeUndefined();
  });
});
