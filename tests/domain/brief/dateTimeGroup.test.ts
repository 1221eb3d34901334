import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateTimeGroup } from '#domain/brief/dateTimeGroup.ts';
import { parseDateTimeGroup } from '#domain/brief/parseDateTimeGroup.ts';
import { zoneLetter } from '#domain/brief/zoneLetter.ts';

const letters = [...'ABCDEFGHIKLMNOPQRSTUVWXYZ'];

/** A whole second of the years 2000 to 2050. */
const anyInstant = fc
  .integer({ min: 946_684_800, max: 2_524_608_000 })
  .map((seconds) => new Date(seconds * 1000).toISOString());

function wholeMinute(instant: string): string {
  return `${instant.slice(0, 16)}:00.000Z`;
}

function sentenceOf(text: string): string {
  const parsed = parseDateTimeGroup(text, '2026-11-25T13:33:00Z');
  return parsed.ok ? '' : parsed.reason.sentence;
}

describe('a date-time group', () => {
  it.each(letters)('comes back as the same minute in zone %s', (letter) => {
    fc.assert(
      fc.property(
        anyInstant,
        fc.constantFrom('full' as const, 'close' as const),
        (instant, form) => {
          const parsed = parseDateTimeGroup(dateTimeGroup(instant, letter, form), instant);
          expect(parsed).toEqual({ ok: true, value: { instant: wholeMinute(instant), letter } });
        },
      ),
      { numRuns: 50 },
    );
  });

  it.each(letters)('comes back to the second as a stamp in zone %s', (letter) => {
    fc.assert(
      fc.property(anyInstant, (instant) => {
        const parsed = parseDateTimeGroup(dateTimeGroup(instant, letter, 'stamp'), instant);
        expect(parsed).toEqual({ ok: true, value: { instant, letter } });
      }),
      { numRuns: 50 },
    );
  });

  it('comes back from its short form when read in the same month', () => {
    fc.assert(
      fc.property(anyInstant, fc.constantFrom(...letters), (instant, letter) => {
        const parsed = parseDateTimeGroup(dateTimeGroup(instant, letter, 'short'), instant);
        expect(parsed).toEqual({ ok: true, value: { instant: wholeMinute(instant), letter } });
      }),
    );
  });

  it('takes the letter of a named zone, by the season', () => {
    expect(dateTimeGroup('2026-01-15T12:00:00Z', 'Europe/Stockholm', 'close')).toBe('151300AJAN26');
    expect(dateTimeGroup('2026-07-15T12:00:00Z', 'Europe/Stockholm', 'close')).toBe('151400BJUL26');
    expect(dateTimeGroup('2026-07-15T12:00:00Z', 'America/New_York', 'short')).toBe('150800Q');
  });

  it.each([
    ['a half-hour zone', 'Asia/Kolkata'],
    ['a zone thirteen hours ahead', 'Pacific/Tongatapu'],
    ['an unknown zone', 'Nowhere/At_All'],
    ['the letter J', 'J'],
  ])('of %s is written in Z', (_, zone) => {
    expect(dateTimeGroup('2026-07-15T12:00:00Z', zone, 'full')).toBe('151200Z JUL 26');
  });

  it('reads its month in any case and with any spaces', () => {
    for (const text of ['271545ZFEB08', '271545Z feb 08', ' 271545Z  Feb08 ']) {
      const parsed = parseDateTimeGroup(text, '2026-11-25T13:33:00Z');
      expect(parsed).toMatchObject({ ok: true, value: { instant: '2008-02-27T15:45:00.000Z' } });
    }
  });

  it('takes the day of a time alone, and the month of a day alone, from the zone of its letter', () => {
    // 23:30 on the last of January in Z is already February ten hours east.
    const reference = '2026-01-31T23:30:00Z';
    expect(parseDateTimeGroup('0900K', reference)).toMatchObject({
      value: { instant: '2026-01-31T23:00:00.000Z' },
    });
    expect(parseDateTimeGroup('010900K', reference)).toMatchObject({
      value: { instant: '2026-01-31T23:00:00.000Z' },
    });
  });

  it('takes the year nearest to the reference', () => {
    const yearOf = (text: string, reference: string) => {
      const parsed = parseDateTimeGroup(text, reference);
      return parsed.ok ? parsed.value.instant.slice(0, 4) : null;
    };
    expect(yearOf('011200Z JAN 99', '2026-01-01T00:00:00Z')).toBe('1999');
    expect(yearOf('011200Z JAN 01', '1999-12-31T00:00:00Z')).toBe('2001');
    expect(yearOf('011200Z JAN 60', '2026-01-01T00:00:00Z')).toBe('2060');
  });

  it.each([
    ['', 'like 051100Z'],
    ['tomorrow', 'like 051100Z'],
    ['51100Z', 'like 051100Z'],
    ['0600Z FEB 26', 'like 051100Z'],
    ['321200Z NOV 26', 'There is no day 32 in November 2026; it has 30 days.'],
    ['001200Z', 'There is no day 0'],
    ['290000Z FEB 23', 'it has 28 days'],
    ['012500Z', 'There is no hour 25'],
    ['012360Z', 'There is no minute 60'],
    ['01235960ZNOV26', 'There is no second 60'],
    ['012400Z', 'write 0000 of the next day'],
    ['011200Z XYZ 26', 'XYZ is no month'],
    ['051100J', 'write the zone letter of the site'],
    ['051100j', 'write the zone letter of the site'],
    ['051100z', 'write Z if that is meant'],
  ])('refuses "%s" and says why', (text, words) => {
    expect(sentenceOf(text)).toContain(words);
  });
});

describe('the zone letter of a named zone', () => {
  it.each([
    ['UTC', 'Z'],
    ['Europe/London', 'Z'],
    ['Etc/GMT-12', 'M'],
    ['Etc/GMT+12', 'Y'],
    ['Asia/Tokyo', 'I'],
    ['Australia/Adelaide', 'Z'],
  ])('%s is %s in winter', (zone, letter) => {
    expect(zoneLetter(zone, '2026-01-15T12:00:00Z')).toBe(letter);
  });
});
