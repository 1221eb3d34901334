import { describe, expect, it } from 'vitest';
import { dateTimeGroup } from '#domain/brief/dateTimeGroup.ts';
import { parseDateTimeGroup } from '#domain/brief/parseDateTimeGroup.ts';
import { hoursOfLetter } from '#domain/brief/zoneLetter.ts';

const reference = '2026-11-25T13:33:00Z';

function instantOf(text: string, from = reference): string {
  const parsed = parseDateTimeGroup(text, from);
  if (!parsed.ok) throw new Error(parsed.reason.sentence);
  return parsed.value.instant;
}

describe('zone letters', () => {
  // ACP 121, as quoted by en.wikipedia.org/wiki/Military_time_zone: Z is 0; A to M without J run east,
  // N to Y west.
  // biome-ignore format: the letters as they are tabled
  const hours: Record<string, number> = {
    Z: 0,
    A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8, I: 9, K: 10, L: 11, M: 12,
    N: -1, O: -2, P: -3, Q: -4, R: -5, S: -6, T: -7, U: -8, V: -9, W: -10, X: -11, Y: -12,
  };

  it.each(Object.entries(hours))('%s stands for %d hours ahead of Z', (letter, ahead) => {
    expect(hoursOfLetter(letter)).toBe(ahead);
  });

  it('J stands for no offset', () => {
    expect(hoursOfLetter('J')).toBeNull();
  });

  // The same page works one case.
  it('0600R is 1100Z', () => {
    expect(instantOf('0600R')).toBe('2026-11-25T11:00:00.000Z');
  });
});

describe('date-time groups with a published meaning', () => {
  // en.wikipedia.org/wiki/Date-time_group; the second meaning of the July case is computed.
  it.each([
    ['271545Z FEB 08', '2008-02-27T15:45:00.000Z'],
    ['091630T JUL 11', '2011-07-09T23:30:00.000Z'],
    ['041200Z FEB 26', '2026-02-04T12:00:00.000Z'],
  ])('%s', (text, instant) => {
    expect(instantOf(text)).toBe(instant);
  });

  it('051100Z is the fifth of the current month', () => {
    expect(instantOf('051100Z')).toBe('2026-11-05T11:00:00.000Z');
    expect(instantOf('051100Z', '2024-02-28T23:00:00Z')).toBe('2024-02-05T11:00:00.000Z');
  });

  // Computed from the zone letters: over the ends of years, months and a leap February.
  it.each([
    ['091630T JUL 11', '092330Z JUL 11'],
    ['312330R DEC 24', '010430Z JAN 25'],
    ['010030K MAR 24', '291430Z FEB 24'],
    ['282200W FEB 23', '010800Z MAR 23'],
    ['010600M JAN 25', '311800Z DEC 24'],
  ])('%s is %s', (text, inZ) => {
    expect(dateTimeGroup(instantOf(text), 'Z', 'full')).toBe(inZ);
    expect(instantOf(inZ)).toBe(instantOf(text));
  });

  it('is written in the three tabled forms', () => {
    const instant = '2008-02-27T15:45:07Z';
    expect(dateTimeGroup(instant, 'Z', 'short')).toBe('271545Z');
    expect(dateTimeGroup(instant, 'Z', 'full')).toBe('271545Z FEB 08');
    expect(dateTimeGroup(instant, 'Z', 'stamp')).toBe('27154507ZFEB08');
  });

  it.each(['321200Z', '012460Z', '012400J', '300000Z FEB 24', '051100z', '051100J'])(
    '%s is refused',
    (text) => {
      const parsed = parseDateTimeGroup(text, reference);
      expect(parsed.ok).toBe(false);
    },
  );
});
