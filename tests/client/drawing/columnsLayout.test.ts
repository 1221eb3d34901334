import { describe, expect, it } from 'vitest';
import { layColumns } from '#client/drawing/columnsLayout.ts';
import { iso } from '#client/words/units.ts';
import { courseNow } from '#domain/progress/views/courseNow.ts';
import { now, nowMinute, plan, state, work } from '../fixtures/larchFord.ts';

const course = courseNow(state, iso(now))!;
const columns = layColumns(state, course);
const taskOf = (id: string) => work.tasks.find((task) => task.id === id)!;

describe('the course of a build', () => {
  it('starts nothing that is to come before now', () => {
    for (const { task, start } of course.runs.values()) {
      if (state.tasks[task]?.status === 'to-come')
        expect(start).toBeGreaterThanOrEqual(nowMinute - 1e-6);
    }
  });

  it('keeps what was told where it was told', () => {
    for (const { task, start, finish } of course.runs.values()) {
      const told = state.tasks[task]!;
      if (told.status !== 'done') continue;
      expect(start).toBeCloseTo((Date.parse(told.startedAt!) - Date.parse(state.start)) / 60_000);
      expect(finish).toBeCloseTo((Date.parse(told.finishedAt!) - Date.parse(state.start)) / 60_000);
    }
  });

  it('keeps every link of the order of work', () => {
    for (const { from, to } of work.links) {
      if (state.tasks[to]?.status !== 'to-come') continue;
      expect(course.runs.get(to)!.start).toBeGreaterThanOrEqual(
        course.runs.get(from)!.finish - 1e-6,
      );
    }
  });

  it('ends its critical chain with the opening, each link touching the next', () => {
    expect(course.chain.at(-1)).toBe(plan.opening);
    for (const [index, task] of course.chain.entries()) {
      const before = course.chain[index - 1];
      if (before === undefined) continue;
      expect(course.runs.get(task)!.start).toBeCloseTo(course.runs.get(before)!.finish);
    }
  });

  it('is not there without a plan', () => {
    expect(courseNow({ ...state, plan: null }, iso(now))).toBeNull();
  });
});

describe('crew columns', () => {
  it('show every planned task once for each of its crews', () => {
    const shown = columns.columns.flatMap(({ crew, boxes }) =>
      boxes.map(({ task }) => `${crew} ${task}`),
    );
    const planned = plan.tasks
      .filter(({ task }) => !taskOf(task).keepOff)
      .flatMap(({ task, crews }) => crews.map(({ crew }) => `${crew} ${task}`));
    expect(shown.sort()).toEqual(planned.sort());
  });

  it('show every keep-off task as one band with its own people', () => {
    const keepOff = work.tasks.filter((task) => task.keepOff);
    expect(columns.bands.map(({ task }) => task).sort()).toEqual(
      keepOff.map(({ id }) => id).sort(),
    );
    for (const band of columns.bands) expect(band.own.length).toBeGreaterThan(0);
  });

  it('show every hold point as a line, ticked where it was passed', () => {
    expect(columns.holds).toHaveLength(work.tasks.filter((task) => task.hold).length);
    expect(columns.holds.find(({ task }) => task === 'level')?.state).toBe('passed');
    expect(columns.holds.find(({ task }) => task === 'open')?.state).toBe('open');
  });

  it('never lay two jobs of a crew over each other', () => {
    for (const { boxes } of columns.columns) {
      for (const one of boxes) {
        for (const other of boxes) {
          if (one === other || one.lane !== other.lane) continue;
          const apart = one.finish <= other.start + 1e-6 || other.finish <= one.start + 1e-6;
          expect(apart || one.lanes !== other.lanes).toBe(true);
        }
      }
    }
  });
});
