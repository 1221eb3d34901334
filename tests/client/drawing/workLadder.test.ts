import { describe, expect, it } from 'vitest';
import { ladderScale, layLadder } from '#client/drawing/workLadder.ts';

const task = (id: string, planned: number, actual: number) => ({
  task: id,
  name: id,
  planned,
  actual,
});

describe('the ladder of one crew', () => {
  const rungs = layLadder([task('a', 5, 5), task('b', 4, 10), task('c', 6, 3)], 2);

  it('sets each task below the one before on either rail', () => {
    expect(rungs.map(({ plannedTop }) => plannedTop)).toEqual([0, 10, 18]);
    expect(rungs.map(({ actualTop }) => actualTop)).toEqual([0, 10, 30]);
  });

  it('draws minutes to one scale on both rails', () => {
    expect(rungs[1]).toMatchObject({ plannedHeight: 8, actualHeight: 20 });
  });

  it('is nothing for a crew that finished nothing', () => {
    expect(layLadder([], 3)).toEqual([]);
  });
});

describe('the scale of the ladders', () => {
  it('gives three tasks in four room for their name, and stays within reason for very short and very long ones', () => {
    expect(ladderScale([2, 5, 8, 60].map((took) => task(`${took}`, 5, took))) * 5).toBe(20);
    expect(ladderScale([task('a', 1, 0.1)])).toBe(6);
    expect(ladderScale([task('a', 60, 90)])).toBe(2);
    expect(ladderScale([])).toBeGreaterThan(0);
  });
});
