import { describe, expect, it } from 'vitest';
import { boxText, lineHeight } from '#client/drawing/boxText.ts';

const nose = { name: 'Nose section 3, left side', number: 35, lanes: 1, critical: false };

describe('the text of a box in the crew columns', () => {
  it('is the name up to its first comma where that fits', () => {
    const { text, offset } = boxText(nose, { top: 0, height: 40, width: 100 }, []);
    expect(text).toBe('Nose section 3');
    expect(offset).toBe(0);
  });

  it('begins with the number where the end of the name, which tells it from the next, would be cut', () => {
    const { text } = boxText(nose, { top: 0, height: 18, width: 90 }, []);
    expect(text).toBe('35 Nose section 3');
  });

  it('is the number alone where jobs lie side by side, without people where even that is tight', () => {
    const place = { top: 0, height: 18, width: 34 };
    const { text, people } = boxText({ ...nose, number: 121, lanes: 3 }, place, []);
    expect(text).toBe('121');
    expect(people).toBe(false);
  });

  it('breaks no word: one that is longer than the line takes the number', () => {
    const { text } = boxText(
      { ...nose, name: 'Orders to everybody', number: 1 },
      { top: 0, height: 200, width: 60 },
      [],
    );
    expect(text).toBe('1 Orders to everybody');
  });

  it('stands below a band that lies over the head of the box', () => {
    const { offset, lines } = boxText(nose, { top: 100, height: 60, width: 200 }, [
      { top: 90, bottom: 118 },
    ]);
    expect(offset).toBe(18);
    expect(lines).toBe(2);
  });

  it('stands above a band where there is room for a line', () => {
    const { offset, lines } = boxText(nose, { top: 100, height: 80, width: 200 }, [
      { top: 100 + lineHeight + 3, bottom: 150 },
    ]);
    expect(offset).toBe(0);
    expect(lines).toBe(1);
  });

  it('is not there where the box is lower than any line', () => {
    expect(boxText(nose, { top: 0, height: 6, width: 200 }, []).lines).toBe(0);
  });
});
