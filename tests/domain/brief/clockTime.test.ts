import { describe, expect, it } from 'vitest';
import { clockTime } from '#domain/brief/clockTime.ts';

describe('clock time at the site', () => {
  it('is the time of day in the zone of the site', () => {
    expect(clockTime('2026-11-25T13:47:59Z', 'UTC')).toBe('13:47');
    expect(clockTime('2026-11-25T13:47:00Z', 'Asia/Kolkata')).toBe('19:17');
    expect(clockTime('2026-07-25T13:47:00Z', 'Europe/Stockholm')).toBe('15:47');
  });

  it('carries the days when it is another day than the one it is read on', () => {
    const evening = '2026-11-25T22:30:00Z';
    expect(clockTime('2026-11-25T23:59:00Z', 'UTC', evening)).toBe('23:59');
    expect(clockTime('2026-11-26T01:20:00Z', 'UTC', evening)).toBe('01:20 +1 day');
    expect(clockTime('2026-11-28T01:20:00Z', 'UTC', evening)).toBe('01:20 +3 days');
    expect(clockTime('2026-11-24T23:00:00Z', 'UTC', evening)).toBe('23:00 -1 day');
  });

  it('counts days as the site does', () => {
    // 22:30 and 01:20 UTC are one day in Tokyo.
    expect(clockTime('2026-11-26T01:20:00Z', 'Asia/Tokyo', '2026-11-25T22:30:00Z')).toBe('10:20');
  });

  it('counts the days over a change of clocks', () => {
    // Clocks go back in Stockholm on 25 October 2026.
    const before = '2026-10-24T20:00:00Z';
    expect(clockTime('2026-10-25T22:30:00Z', 'Europe/Stockholm', before)).toBe('23:30 +1 day');
  });
});
