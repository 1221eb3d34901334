import { describe, expect, it } from 'vitest';
import { gainWords } from '#client/screens/leader/plan/gain.ts';
import type { Forecast } from '#domain/forecast/forecast.ts';

const start = '2026-11-25T11:30:00Z';

/** A forecast of which only the percentiles matter: one every minute from `first`. */
function from(first: number): Forecast {
  const percentiles = Array.from({ length: 99 }, (_, at) => first + at);
  const p = (share: number): number => percentiles[share - 1]!;
  return {
    runs: 100,
    seed: 1,
    shape: 'pert',
    mean: p(50),
    sd: 10,
    p10: p(10),
    p50: p(50),
    p80: p(80),
    p90: p(90),
    chanceBy: null,
    openings: [],
    percentiles,
    onChain: [],
  };
}

describe('what a plan on trial gains', () => {
  it('is said at the chosen confidence first, then at even chance', () => {
    expect(gainWords(from(200), from(188), 0.9, start)).toBe(
      'Nine in ten: 12 min earlier. Even chance: 12 min earlier.',
    );
    expect(gainWords(from(200), from(280), 0.8, start)).toBe(
      'Eight in ten: 1 h 20 min later. Even chance: 1 h 20 min later.',
    );
  });

  it('is said once where the leader chose the even chance', () => {
    expect(gainWords(from(200), from(200), 0.5, start)).toBe('Even chance: as before.');
  });

  it('may be later at one and as before at the other', () => {
    const wider = {
      ...from(200),
      percentiles: from(200).percentiles.map((at, rank) => (rank > 60 ? at + 5 : at)),
    };
    expect(gainWords(from(200), wider, 0.9, start)).toBe(
      'Nine in ten: 5 min later. Even chance: as before.',
    );
  });
});
