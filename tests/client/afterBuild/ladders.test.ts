import { describe, expect, it } from 'vitest';
import { furthest, laddersOf } from '#client/screens/afterBuild/ladders.ts';
import type { Review } from '#domain/forecast/after/review.ts';
import { smallBuild, standingSo } from '../support/smallBuild.ts';

const task = (id: string, crews: string[], planned: number, actual: number) => ({
  task: id,
  name: id,
  crews,
  planned,
  actual,
  usual: actual,
  trust: 1,
});

const review: Review = {
  format: 'spanwright-review',
  version: 1,
  build: 'small',
  tasks: [
    task('bay-9-left', ['left'], 4, 9),
    task('bay-10-left', ['left'], 4, 5),
    task('bay-9-right', ['right'], 4, 4),
    task('move-5', ['left', 'right'], 6, 3),
  ],
  crews: [
    { crew: 'left', name: 'Left girder', tasks: 3, planned: 14, actual: 17 },
    { crew: 'right', name: 'Right girder', tasks: 2, planned: 10, actual: 7 },
  ],
  proposals: [],
};

describe('the ladders of a build', () => {
  const finished = (id: string, at: string, state = smallBuild) =>
    standingSo(id, { status: 'done', finishedAt: `2026-11-25T${at}:00Z` }, state);
  const { tasks } = finished(
    'bay-9-left',
    '12:50',
    finished('bay-10-left', '12:40', finished('move-5', '13:10', finished('bay-9-right', '12:45'))),
  );
  const [left, right] = laddersOf(review, tasks);

  it('give each crew its tasks in the order in which they were done, joint ones to each', () => {
    expect(left?.tasks.map((one) => one.task)).toEqual(['bay-10-left', 'bay-9-left', 'move-5']);
    expect(right?.tasks.map((one) => one.task)).toEqual(['bay-9-right', 'move-5']);
  });

  it('say the sums and the pace in plain words', () => {
    expect(left?.facts).toEqual(['14 min planned, 17 min taken', '6 min for each 5 planned']);
    expect(right?.facts[1]).toBe('7 min for each 10 planned');
  });
});

describe('what went furthest from the plan', () => {
  it('is named first, quick or slow, and little things are not named', () => {
    expect(furthest(review, 5).map((one) => one.task)).toEqual(['bay-9-left', 'move-5']);
    expect(furthest(review, 1).map((one) => one.task)).toEqual(['bay-9-left']);
  });
});
