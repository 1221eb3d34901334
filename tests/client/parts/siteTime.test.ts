import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSiteTime, writeSiteTime } from '#client/parts/siteTime.ts';

const berlin = 'Europe/Berlin';
/** 13:33 in Berlin, one hour ahead of UTC. */
const from = '2026-11-25T12:33:00.000Z';

describe('a time as it is spoken', () => {
  for (const [text, instant] of [
    ['17:00', '2026-11-25T16:00:00.000Z'],
    ['1700', '2026-11-25T16:00:00.000Z'],
    ['13:33', '2026-11-25T12:33:00.000Z'],
    ['9:05', '2026-11-26T08:05:00.000Z'],
    ['271200', '2026-11-27T11:00:00.000Z'],
    ['271200z', '2026-11-27T12:00:00.000Z'],
    ['271200Z NOV 26', '2026-11-27T12:00:00.000Z'],
  ] as const) {
    it(`${text} is ${instant}`, () => {
      expect(readSiteTime(text, berlin, from)).toBe(instant);
    });
  }

  it('that is none is refused', () => {
    for (const text of ['', 'noon', '24:00', '17', '12:60', '320000', '5 pm']) {
      expect(readSiteTime(text, berlin, from)).toBeNull();
    }
  });

  it('is written so that it reads back as the same minute', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 20 * 24 * 60 }),
        fc.constantFrom('UTC', berlin, 'America/St_Johns'),
        (minutes, zone) => {
          const at = Date.parse(from) + minutes * 60_000;
          const read = readSiteTime(writeSiteTime(at, zone, from), zone, from);
          expect(Math.floor(Date.parse(read ?? '') / 60_000)).toBe(Math.floor(at / 60_000));
        },
      ),
    );
  });
});
