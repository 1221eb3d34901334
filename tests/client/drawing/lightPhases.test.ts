import { describe, expect, it } from 'vitest';
import { lightCourse } from '#client/drawing/lightPhases.ts';

const hour = 3_600_000;
const larchFord = { latitude: 52.4, longitude: 0.9 };
const course = (place: { latitude: number; longitude: number }, from: string, hours = 24) => {
  const begin = Date.parse(from);
  return { begin, end: begin + hours * hour, ...lightCourse(place, begin, begin + hours * hour) };
};

describe('the light between two moments', () => {
  const winter = course(larchFord, '2026-11-25T00:00:00Z');

  it('goes through every twilight in turn', () => {
    expect(winter.turns.map(({ name }) => name)).toEqual([
      'nauticalDawn',
      'civilDawn',
      'sunrise',
      'sunset',
      'civilDusk',
      'nauticalDusk',
    ]);
    expect(winter.spells.map(({ phase }) => phase)).toEqual([
      'night',
      'nautical',
      'civil',
      'day',
      'civil',
      'nautical',
      'night',
    ]);
  });

  it('covers the whole window without a gap, also one that begins in the dark and runs over midnight', () => {
    for (const { begin, end, spells } of [winter, course(larchFord, '2026-11-25T20:00:00Z')]) {
      expect(spells[0]!.from).toBe(begin);
      expect(spells.at(-1)!.to).toBe(end);
      for (const [index, spell] of spells.slice(1).entries()) {
        expect(spell.from).toBe(spells[index]!.to);
      }
      expect(spells[0]!.phase).toBe('night');
      expect(spells.at(-1)!.phase).toBe('night');
    }
  });

  it('is day throughout where the sun stays up, and night where it stays far down', () => {
    const north = { latitude: 78, longitude: 15 };
    const summer = course(north, '2026-06-21T00:00:00Z');
    expect(summer.turns).toEqual([]);
    expect(summer.spells.map(({ phase }) => phase)).toEqual(['day']);
    const dark = course({ latitude: 88, longitude: 15 }, '2026-12-21T00:00:00Z');
    expect(dark.turns).toEqual([]);
    expect(dark.spells.map(({ phase }) => phase)).toEqual(['night']);
  });

  it('knows twilight on a day on which the sun does not rise', () => {
    const noon = course({ latitude: 69.6, longitude: 18.9 }, '2026-12-21T00:00:00Z');
    expect(noon.turns.map(({ name }) => name)).not.toContain('sunrise');
    expect(noon.spells.map(({ phase }) => phase)).toContain('civil');
    expect(noon.spells.map(({ phase }) => phase)).not.toContain('day');
  });

  it('never gets as dark as night in a bright summer night', () => {
    const bright = course({ latitude: 58, longitude: 0 }, '2026-06-21T12:00:00Z');
    expect(bright.spells.map(({ phase }) => phase)).toEqual([
      'day',
      'civil',
      'nautical',
      'civil',
      'day',
    ]);
  });
});
