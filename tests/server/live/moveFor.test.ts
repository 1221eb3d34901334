import { describe, expect, it } from 'vitest';
import { moveFor } from '#server/live/fullForecast.ts';

const cause = (kind: 'progress' | 'pace' | 'stores', minutes: number, why: string) => ({
  kind,
  minutes,
  sentence: `${Math.abs(minutes)} min ${minutes > 0 ? 'later' : 'earlier'}: ${why}.`,
});
const move = {
  number: 40,
  at: '2026-11-25T12:40:00Z',
  since: { number: 38, at: '2026-11-25T12:30:00Z' },
  confidence: 0.9,
  minutes: 9,
  causes: [
    cause('stores', 12, 'Truck 5 25 min late'),
    cause(
      'progress',
      4,
      'Bay 9 took 8 min in place of 4, Bay 10 is at work for 9 min in place of 5',
    ),
    cause(
      'progress',
      -3,
      'what is done is no longer in doubt; also Bay 8 took 3 min in place of 5',
    ),
    cause('pace', 2, 'Left girder takes 6 min for each 5 planned'),
  ],
};

describe('what moved the opening, as others than the leader read it', () => {
  it('has no crew’s pace and no task’s own time in it, only what went well or badly', () => {
    const said = moveFor('commander', move).causes.map(({ sentence }) => sentence);
    expect(said).toEqual([
      '12 min later: Truck 5 25 min late.',
      '4 min later: Bay 9 took longer than planned, Bay 10 takes longer than planned.',
      '3 min earlier: what is done is no longer in doubt; also Bay 8 went quickly.',
      '2 min later: the pace is known better.',
    ]);
  });

  it('is whole for the leader', () => {
    expect(moveFor('leader', move)).toBe(move);
  });
});
