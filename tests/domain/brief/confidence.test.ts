import { describe, expect, it } from 'vitest';
import { confidenceWords, ofTwentyWords } from '#domain/brief/confidence.ts';

describe('confidence in words', () => {
  it.each([
    [0.5, 'Even chance'],
    [0.55, 'Eleven in twenty'],
    [0.7, 'Seven in ten'],
    [0.8, 'Eight in ten'],
    [0.85, 'Seventeen in twenty'],
    [0.9, 'Nine in ten'],
    [0.95, 'Nineteen in twenty'],
    [0.99, '99 in a hundred'],
    [0.875, '87 in a hundred'],
  ])('%d is "%s"', (confidence, words) => {
    expect(confidenceWords(confidence)).toBe(words);
  });

  it.each([
    [0, 'none of 20 makes it'],
    [1, '1 of 20 makes it'],
    [19, '19 of 20 make it'],
    [20, 'all 20 make it'],
  ])('%d openings of twenty: "%s"', (count, words) => {
    expect(ofTwentyWords(count, 20)).toBe(words);
  });
});
