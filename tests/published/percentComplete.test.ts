import { describe, expect, it } from 'vitest';
import { workText } from '#domain/brief/reportBuild.ts';
import { percentComplete } from '#domain/progress/views/percent.ts';
import { plainTask, stateOf, withDone } from '#tests/domain/brief/buildState.ts';

// Percent complete by man-hours is earned over total. Worked case (computed; the fields of a build
// report follow US Army FM 3-34.331 ch. 11 and common practice): with 20 of 80 man-hours done the work
// is 25 % complete, though 5 of its 10 tasks, 50 %, are done.
const small = [1, 2, 3, 4, 5].map((number) => plainTask(`small${number}`, number, 4, 60));
const large = [6, 7, 8, 9, 10].map((number) => plainTask(`large${number}`, number, 6, 120));
const work = { tasks: [...small, ...large], links: [], crews: [], zones: [], loads: [] };

const state = small.reduce(
  (before, { id }) => withDone(before, id, '2026-11-25T11:30:00.000Z', '2026-11-25T12:30:00.000Z'),
  stateOf(work),
);

describe('work complete by man-hours', () => {
  it('is 25 per cent when 20 of 80 man-hours are done, though half of the tasks are', () => {
    expect(percentComplete(state)).toEqual({ done: 20 * 60, total: 80 * 60, share: 0.25 });
  });

  it('is reported with its measure named', () => {
    expect(workText(state)).toBe(
      '25 per cent by man-hours, 20.0 of 80.0 (expected minutes times usual people); 5 of 10 tasks.',
    );
  });
});
