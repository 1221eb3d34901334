import { describe, expect, it } from 'vitest';
import { lightSentence } from '#domain/brief/light.ts';

const london = { latitude: 51.5, longitude: -0.1333 };
const harra = { latitude: 67.4066, longitude: 20.0997 };
const tromso = { latitude: 69.6, longitude: 18.95 };
const pole = { latitude: 89, longitude: 0 };

// Times of London on 1 and 2 December 2015 as printed in a city table (see tests/published): sunrise
// 07:43 and 07:45, sunset 15:55, end of civil twilight 16:34, of nautical 17:16. A minute either way is
// rounding, so sentences are compared without their minutes.
function withoutMinutes(sentence: string): string {
  return sentence.replace(/(\d\d):\d\d/g, '$1:..');
}

function at(time: string): string {
  return withoutMinutes(lightSentence(london, `2015-12-01T${time}:00Z`, 'Europe/London'));
}

describe('the light in words', () => {
  it('names in the morning what is to come, from twilight to twilight', () => {
    expect(at('05:00')).toBe(
      'BMNT 06:.., BMCT 07:.., sunrise 07:.., sunset 15:.., EECT 16:.., EENT 17:...',
    );
  });

  it('names by day how long the light lasts', () => {
    expect(at('12:00')).toBe('Sunset 15:.., EECT 16:.., EENT 17:...');
  });

  it('names after sunset the twilight left and the next morning', () => {
    expect(at('16:50')).toBe(
      'The sun has set. EENT 17:.., BMNT 06:.. +1 day, BMCT 07:.. +1 day, sunrise 07:.. +1 day.',
    );
  });

  it('answers where the sun stays up', () => {
    expect(lightSentence(tromso, '2019-06-05T10:00:00Z', 'Europe/Oslo')).toBe(
      'The sun stays up all day.',
    );
  });

  it('answers where the sun does not rise, with the twilight there is', () => {
    const dim = lightSentence(harra, '2022-12-21T10:40:00Z', 'Europe/Stockholm');
    expect(withoutMinutes(dim)).toMatch(
      /^The sun does not rise today. BMNT \d\d:.., BMCT \d\d:.., EECT \d\d:.., EENT \d\d:...$/,
    );
    expect(lightSentence(pole, '2022-12-21T10:40:00Z', 'UTC')).toBe(
      'The sun does not rise today. There is no twilight.',
    );
  });

  it('leaves out a twilight that lasts all night', () => {
    // London at midsummer: nautical twilight ends, but at 60 degrees north it does not.
    const shetland = { latitude: 60.15, longitude: -1.15 };
    const sentence = lightSentence(shetland, '2026-06-21T12:00:00Z', 'Europe/London');
    expect(withoutMinutes(sentence)).toMatch(/^Sunset \d\d:.., EECT \d\d:..( \+1 day)?\.$/);
  });
});
