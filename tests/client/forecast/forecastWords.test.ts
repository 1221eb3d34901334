import { describe, expect, it } from 'vitest';
import { readSize } from '#client/screens/forecast/LeverSizes.tsx';
import { foldQuiet, markedMoves, moveSaid, shiftSaid } from '#client/screens/forecast/moveWords.ts';

const move = {
  number: 40,
  at: '2026-11-25T12:40:00Z',
  since: { number: 38, at: '2026-11-25T12:30:00Z' },
  confidence: 0.9,
  minutes: 9.6,
  causes: [
    { kind: 'stores' as const, minutes: 12, sentence: '12 min later: Truck 5 25 min late.' },
    { kind: 'progress' as const, minutes: -2.4, sentence: '2 min earlier: time went on.' },
  ],
};

describe('a move of the opening in words', () => {
  it('says how far and which way, in whole minutes', () => {
    expect(shiftSaid(9.6)).toBe('10 min later');
    expect(shiftSaid(-75)).toBe('1 h 15 min earlier');
    expect(shiftSaid(0.2)).toBe('no change in all');
  });

  it('says the causes after the whole', () => {
    expect(moveSaid(move)).toBe(
      '10 min later. 12 min later: Truck 5 25 min late. 2 min earlier: time went on.',
    );
    expect(moveSaid({ ...move, causes: [] })).toBe('10 min later.');
    expect(moveSaid({ ...move, minutes: 12.2, causes: [move.causes[0]!] })).toBe(
      '12 min later: Truck 5 25 min late.',
    );
  });
});

describe('the moves that are marked', () => {
  it('are the largest either way, in the order of time', () => {
    const moves = [3, -9, 1, 7, -2].map((minutes, number) => ({ ...move, number, minutes }));
    expect(markedMoves(moves, 3).map(({ minutes }) => minutes)).toEqual([3, -9, 7]);
    expect(markedMoves(moves, 9)).toEqual(moves);
  });
});

describe('moves in which nothing was told', () => {
  const quiet = (number: number, minutes: number) => ({
    ...move,
    number,
    minutes,
    since: { number: number - 1, at: `2026-11-25T12:${10 + number}:00Z` },
    causes: [
      { kind: 'progress' as const, minutes, sentence: `${minutes} min later: time went on.` },
    ],
  });

  it('are one where they follow one another, from the first to the last', () => {
    const folded = foldQuiet([quiet(1, 2), quiet(2, 3), move, quiet(4, 1)]);
    expect(folded.map(({ minutes }) => minutes)).toEqual([5, 9.6, 1]);
    expect(folded[0]).toMatchObject({ number: 2, since: { number: 0 } });
    expect(moveSaid(folded[0]!)).toBe('5 min later: time went on.');
  });

  it('leaves alone what has a cause', () => {
    expect(foldQuiet([move, move])).toEqual([move, move]);
  });
});

describe('how far a lever is pulled, as a person writes it', () => {
  it('is taken within its limits, with a comma too', () => {
    expect(readSize('winch', '2,5')).toBe(2.5);
    expect(readSize('truckEarlier', '45')).toBe(45);
  });

  it('is refused outside them, empty, or as part of a person', () => {
    expect(readSize('people', '1.5')).toBeNull();
    expect(readSize('people', '7')).toBeNull();
    expect(readSize('vehicleWait', ' ')).toBeNull();
    expect(readSize('winch', 'two')).toBeNull();
  });
});
