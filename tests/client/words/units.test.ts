import { describe, expect, it } from 'vitest';
import * as units from '#client/words/units.ts';

describe('units for people', () => {
  it('writes lengths, masses and times with their unit', () => {
    expect(units.metres(31)).toBe('31.0 m');
    expect(units.centimetres(0.04)).toBe('4 cm');
    expect(units.minutes(4.4)).toBe('4 min');
    expect(units.minutes(65)).toBe('1 h 05 min');
    expect(units.percent(0.553)).toBe('55 %');
    expect(units.people(1)).toBe('1 person');
    expect(units.people(7)).toBe('7 people');
  });

  it('says how long ago in seconds, then minutes', () => {
    expect(units.span(6_400)).toBe('6 s');
    expect(units.span(-5)).toBe('0 s');
    expect(units.span(240_000)).toBe('4 min');
  });

  it('writes clock times of the site, and the day when it is another', () => {
    expect(units.clock('2026-11-25T13:33:59Z', 'UTC')).toBe('13:33');
    expect(units.clock('2026-06-25T13:33:00Z', 'Europe/Berlin')).toBe('15:33');
    expect(units.clock('2026-11-26T01:20:00Z', 'UTC', '2026-11-25T22:00:00Z')).toContain('+1 day');
  });

  it('names the zone by its letter, or by its offset where no letter fits', () => {
    // Zone letters: ACP 121, as in domain/brief/zoneLetter.ts; half-hour zones have none.
    expect(units.zoneName('2026-11-25T13:33:00Z', 'UTC')).toBe('Z');
    expect(units.zoneName('2026-06-25T13:33:00Z', 'Europe/Berlin')).toBe('B');
    expect(units.zoneName('2026-11-25T13:33:00Z', 'Asia/Kolkata')).toBe('UTC+05:30');
  });

  it('goes from minutes of the build to instants and back', () => {
    const start = '2026-11-25T11:30:00Z';
    expect(units.minuteOf(start, units.atMinute(start, 123))).toBe(123);
  });
});
