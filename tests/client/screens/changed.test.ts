import { describe, expect, it } from 'vitest';
import { changedWords } from '#client/screens/commander/changed.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import { forecast, now, state } from '../fixtures/larchFord.ts';

/** The fixture's forecast, made so many minutes ago and that much earlier. */
function told(minutesAgo: number, earlier: number): ForecastFrame {
  const { percentiles } = forecast.forecast!;
  return {
    ...forecast,
    at: new Date(now - minutesAgo * 60_000).toISOString(),
    forecast: {
      ...forecast.forecast!,
      percentiles: percentiles.map((minute) => minute - earlier),
    },
  };
}

describe('what changed about the opening', () => {
  it('is measured against about an hour ago', () => {
    expect(changedWords(state, [told(90, 40), told(61, 14), told(20, 3)], forecast, now)).toBe(
      '14 min later than was said at 12:32.',
    );
  });

  it('is measured against the first forecast of a young build', () => {
    expect(changedWords(state, [told(20, -9)], forecast, now)).toBe(
      '9 min earlier than was said at 13:13.',
    );
  });

  it('is called the same when it is less than two minutes', () => {
    expect(changedWords(state, [told(61, 1)], forecast, now)).toContain('The same');
  });

  it('is silent with nothing to compare', () => {
    expect(changedWords(state, [], forecast, now)).toBeNull();
    expect(changedWords(state, [told(2, 14)], forecast, now)).toBeNull();
    expect(changedWords(state, [told(61, 14)], null, now)).toBeNull();
  });
});
