import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lightOf } from '#domain/brief/light.ts';
import { darkSpells } from '#domain/forecast/light/darkSpells.ts';
import { finishInLight, lightClock, lightMinutes } from '#domain/forecast/light/lightClock.ts';

const night = [
  { from: -600, to: -100 },
  { from: 100, to: 700 },
];

const spells = fc
  .array(fc.integer({ min: 1, max: 400 }), { minLength: 2, maxLength: 8 })
  .map((steps) => {
    let at = -200;
    const edges = steps.map((step) => {
      at += step;
      return at;
    });
    return edges.flatMap((from, k) =>
      k % 2 === 0 && k + 1 < edges.length ? [{ from, to: edges[k + 1]! }] : [],
    );
  });

describe('work in the dark', () => {
  it('slows a task that runs into dusk from dusk on, and no sooner', () => {
    const clock = lightClock(night, 1.5);
    expect(finishInLight(clock, 60, 40)).toBe(100);
    // 20 minutes by day, 40 more take 60.
    expect(finishInLight(clock, 80, 60)).toBeCloseTo(160, 9);
    // All in the dark.
    expect(finishInLight(clock, 200, 40)).toBeCloseTo(260, 9);
  });

  it('goes quickly again from dawn on', () => {
    const clock = lightClock(night, 1.5);
    // 60 dark minutes do 40, the other 40 are by day.
    expect(finishInLight(clock, 640, 80)).toBeCloseTo(740, 9);
    // One task through the whole night: 20 before it, 400 in it, 30 after.
    expect(finishInLight(clock, 80, 450)).toBeCloseTo(730, 9);
  });

  it('never finishes earlier for more minutes, a later start or a darker night', () => {
    const minute = fc.double({ min: 0, max: 1500, noNaN: true });
    fc.assert(
      fc.property(
        spells,
        minute,
        minute,
        fc.double({ min: 0, max: 90, noNaN: true }),
        (dark, begin, minutes, more) => {
          const clock = lightClock(dark, 1.5);
          const finish = finishInLight(clock, begin, minutes);
          expect(finish).toBeGreaterThanOrEqual(begin + minutes - 1e-9);
          expect(finish).toBeLessThanOrEqual(begin + 1.5 * minutes + 1e-9);
          expect(finishInLight(clock, begin, minutes + more)).toBeGreaterThanOrEqual(finish - 1e-9);
          expect(finishInLight(clock, begin + more, minutes)).toBeGreaterThanOrEqual(finish - 1e-9);
          expect(finishInLight(lightClock(dark, 2), begin, minutes)).toBeGreaterThanOrEqual(
            finish - 1e-9,
          );
        },
      ),
    );
  });

  it('counts between begin and finish the minutes of the work', () => {
    fc.assert(
      fc.property(
        spells,
        fc.integer({ min: 0, max: 1500 }),
        fc.integer({ min: 0, max: 900 }),
        (dark, begin, minutes) => {
          const clock = lightClock(dark, 1.5);
          const finish = finishInLight(clock, begin, minutes);
          expect(lightMinutes(clock, finish) - lightMinutes(clock, begin)).toBeCloseTo(minutes, 7);
        },
      ),
    );
  });

  it('makes no difference where nothing slows', () => {
    expect(finishInLight(lightClock(night, 1), 80, 60)).toBe(140);
    expect(finishInLight(lightClock([], 1.5), 80, 60)).toBe(140);
  });
});

const london = { latitude: 51.5, longitude: -0.1333 };
const day = 24 * 60;

describe('the dark at a place', () => {
  it('lasts from the end of evening to the begin of morning civil twilight', () => {
    const start = '2015-12-01T12:00:00Z';
    const dark = darkSpells(london, start, 2 * day);
    const today = lightOf(london, start);
    const tomorrow = lightOf(london, '2015-12-02T12:00:00Z');
    const minute = (instant: string | null) => (Date.parse(instant!) - Date.parse(start)) / 60_000;
    expect(dark).toHaveLength(3);
    expect(dark[1]!.from).toBeCloseTo(minute(today.civilDusk), 3);
    expect(dark[1]!.to).toBeCloseTo(minute(tomorrow.civilDawn), 3);
  });

  it('reaches back before a start by night', () => {
    const dark = darkSpells(london, '2015-12-01T23:00:00Z', day);
    expect(dark.some(({ from, to }) => from < 0 && to > 0)).toBe(true);
  });

  it('never comes where the sun stays up, and never ends where it stays down', () => {
    const tromso = { latitude: 69.6, longitude: 18.95 };
    const nearPole = { latitude: 85, longitude: 0 };
    expect(darkSpells(tromso, '2019-06-05T06:00:00Z', 3 * day)).toEqual([]);
    const winter = darkSpells(nearPole, '2019-12-21T06:00:00Z', 3 * day);
    expect(winter).toEqual([{ from: -day, to: 3 * day }]);
  });

  it('is shortened by twilight where the sun does not rise but comes near', () => {
    const harra = { latitude: 67.4066, longitude: 20.0997 };
    const dark = darkSpells(harra, '2022-12-21T00:00:00Z', day);
    const noon = 10.7 * 60;
    expect(dark.length).toBeGreaterThan(1);
    expect(dark.every(({ from, to }) => noon < from || noon > to)).toBe(true);
  });

  it('is the same dark whenever the look begins', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -75, max: 75, noNaN: true }),
        fc.nat({ max: 364 }),
        fc.nat({ max: day - 1 }),
        (latitude, date, minute) => {
          const place = { latitude, longitude: 20 };
          const start = Date.parse('2026-01-01T00:00:00Z') + (date * day + minute) * 60_000;
          const isDark = (from: number, at: number) =>
            darkSpells(place, new Date(from).toISOString(), 2 * day).some(
              (spell) => spell.from <= (at - from) / 60_000 && (at - from) / 60_000 < spell.to,
            );
          const at = start + 600 * 60_000;
          expect(isDark(start, at)).toBe(isDark(start + 300 * 60_000, at));
        },
      ),
      { numRuns: 60 },
    );
  });
});
