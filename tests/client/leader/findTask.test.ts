import { describe, expect, it } from 'vitest';
import { filterTasks } from '#client/screens/leader/work/filterTasks.ts';
import { findTask } from '#client/screens/leader/work/findTask.ts';
import { threeIn } from '#client/screens/leader/work/ThreeNumbers.tsx';
import { smallBuild, smallNow, standingSo } from '../support/smallBuild.ts';

const now = new Date(smallNow).toISOString();
const numbers = (
  filter: Parameters<typeof filterTasks>[1],
  find = '',
  state = smallBuild,
): number[] => filterTasks(state, filter, find, now).map(({ number }) => number);

describe('a task that somebody types', () => {
  it('is named by number, by number and name, by name, or by id', () => {
    for (const text of ['57', '57 Bay 9, left side', 'bay 9, LEFT side', 'bay-9-left', ' 57 ']) {
      expect(findTask(smallBuild.work, text)?.id).toBe('bay-9-left');
    }
  });

  it('is none where the text means none', () => {
    for (const text of ['', '5', 'bay 9', '999'])
      expect(findTask(smallBuild.work, text)).toBeNull();
  });
});

describe('the list of tasks', () => {
  it('is found by whole numbers, and by parts of names and crews', () => {
    expect(numbers('all', '57')).toEqual([57]);
    // Bay 9, not task 9 or 90.
    expect(numbers('all', '9')).toEqual([57, 60]);
    expect(numbers('all', 'bay left')).toEqual([57, 58]);
    expect(numbers('all', 'rollers')).toEqual([70, 71]);
    expect(numbers('all', 'nothing')).toEqual([]);
  });

  it('can show what is open, at work, ready, held or keep-off alone', () => {
    const state = standingSo('bay-9-left', { status: 'done' });
    expect(numbers('open', '', state)).toEqual([58, 60, 70, 71]);
    expect(numbers('ready', '', state)).toEqual([58, 60, 70]);
    expect(numbers('holds')).toEqual([70]);
    expect(numbers('keepOff')).toEqual([71]);
    expect(numbers('now', '', standingSo('bay-9-right', { status: 'stopped' }))).toEqual([60]);
  });
});

describe('three numbers', () => {
  it('rise and are not negative', () => {
    expect(threeIn(['2', '2,5', '5'], false)).toEqual([2, 2.5, 5]);
    expect(threeIn(['2', '2', '2'], true)).toEqual([2, 2, 2]);
    for (const wrong of [
      ['3', '2', '5'],
      ['-1', '2', '5'],
      ['', '2', '5'],
      ['x', '2', '5'],
    ] as const) {
      expect(threeIn(wrong, false)).toBeNull();
    }
    expect(threeIn(['2', '2.5', '5'], true)).toBeNull();
  });
});
