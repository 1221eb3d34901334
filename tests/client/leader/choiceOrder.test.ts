import { describe, expect, it } from 'vitest';
import { rankChoices } from '#client/screens/leader/ground/choiceOrder.ts';
import { keyOf } from '#client/screens/leader/ground/useChoiceTimes.ts';
import { type Choice, choices } from '#domain/bridge/choices.ts';
import { heron, larchFord } from '#tests/domain/kit/heronKit.ts';

const { fitting } = choices(larchFord, heron, '');
const [short, long] = fitting as [Choice, Choice];
const at = (p80: number) => ({ planned: p80 - 60, p50: p80 - 30, p80 });
const times = (ofShort: number | null, ofLong: number | null) =>
  new Map([
    [keyOf(short.bridge), ofShort === null ? null : at(ofShort)],
    [keyOf(long.bridge), ofLong === null ? null : at(ofLong)],
  ]);

describe('the wanted bridge of a choice', () => {
  it('is the one with the shortest chain while the times are not there, and says no time', () => {
    const [first, second] = rankChoices(fitting, new Map());
    expect(first?.choice).toBe(short);
    expect(first?.times).toBeUndefined();
    expect(second?.why).toMatch(/^Ruled out by its order of work: .+ more/);
  });

  it('is the fastest at eight in ten once they are, and says by how much', () => {
    const [first, second] = rankChoices(fitting, times(360, 378));
    expect([first?.choice, first?.wanted]).toEqual([short, true]);
    expect(first?.why).toBe(
      'The fastest that fits. The next, 12 bays, 6 nose sections, takes 18 min more.',
    );
    expect(second?.why).toMatch(
      /^Ruled out: 18 min later at eight in ten, and .+ t more to bring\.$/,
    );
  });

  it('is the longer one where that opens sooner', () => {
    const [first, second] = rankChoices(fitting, times(378, 360));
    expect(first?.choice).toBe(long);
    expect(second?.why).toBe('Ruled out: 18 min later at eight in ten.');
  });

  it('is of two alike the one with less to bring', () => {
    const [first, second] = rankChoices(fitting, times(360.4, 360));
    expect(first?.choice).toBe(short);
    expect(first?.why).toMatch(/^No slower than the next/);
    expect(second?.why).toMatch(/^Ruled out: no faster/);
  });

  it('is never one that cannot be planned', () => {
    const [first, second] = rankChoices(fitting, times(null, 400));
    expect(first?.choice).toBe(long);
    expect(second?.why).toMatch(/^Ruled out: its work cannot be planned/);
  });

  it('is the only one where there is no other', () => {
    expect(rankChoices([short], new Map())[0]?.why).toBe('The only one that fits.');
  });
});
