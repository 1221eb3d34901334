import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lowerBound } from '#domain/schedule/lowerBound.ts';
import { searchPlan } from '#domain/schedule/searchPlan.ts';
import { compilationOf } from '#tests/support/compilationOf.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';

describe('The search for a plan', () => {
  it('makes no more schedules than asked for, and never a worse one with more', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 2, max: 40 }), (seed, tasks) => {
        const compiled = compilationOf(
          randomWork(seed, { tasks, crews: 3, zones: 2, joint: true }),
        ).compiled;
        const bound = lowerBound(compiled);
        let before = Number.POSITIVE_INFINITY;
        for (const effort of [1, 10, 100]) {
          const found = searchPlan(compiled, { effort, seed: 1, bound })!;
          // A push to the end and back, or a window, is finished once it is begun.
          expect(found.schedules).toBeLessThanOrEqual(effort + 4);
          expect(found.opening).toBeLessThanOrEqual(before);
          expect(found.opening).toBeGreaterThanOrEqual(bound);
          before = found.opening;
        }
      }),
      { numRuns: 40 },
    );
  });

  it('stops at the bound', () => {
    const work = smallWork(
      Array.from({ length: 8 }, (_, at) => ({ id: `t${at}`, minutes: 5, people: 2 })),
      { crews: [{ id: 'left', people: 4 }] },
    );
    const compiled = compilationOf(work).compiled;
    const bound = lowerBound(compiled);
    expect(bound).toBe(20 * 60);
    expect(searchPlan(compiled, { effort: 1000, seed: 1, bound })).toMatchObject({
      opening: bound,
      schedules: 1,
    });
  });
});

describe('The lower bound', () => {
  // Worked out by hand.
  it('is the longest path with stores and hours', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 5, loads: ['truck'] },
        { id: 'B', minutes: 10, after: ['A'] },
        { id: 'C', minutes: 5, crews: ['night'] },
      ],
      {
        crews: [
          { id: 'day', people: 9 },
          { id: 'night', people: 9, from: 20 },
        ],
        loads: [{ id: 'truck', name: 'Truck', arrives: 7 }],
      },
    );
    expect(lowerBound(compilationOf(work).compiled)).toBe(25 * 60);
  });

  it('is the work of a crew between what must come before and after it', () => {
    const work = smallWork(
      [
        { id: 'first', minutes: 10, crews: ['other'] },
        ...['A', 'B', 'C'].map((id) => ({
          id,
          minutes: 8,
          people: 3,
          crews: ['left'],
          after: ['first'],
        })),
        { id: 'last', minutes: 4, crews: ['other'], after: ['A', 'B', 'C'] },
      ],
      {
        crews: [
          { id: 'left', people: 4 },
          { id: 'other', people: 1 },
        ],
      },
    );
    // 3 tasks x 8 min x 3 people by 4 people take 18 min, between the first 10 and the last 4.
    expect(lowerBound(compilationOf(work).compiled)).toBe(32 * 60);
  });

  it('is the work of all crews together where tasks may choose among them', () => {
    const rows = ['A', 'B', 'C'].map((id) => ({
      id,
      minutes: 10,
      people: 2,
      crews: ['left', 'right'],
    }));
    const work = smallWork(rows, {
      crews: [
        { id: 'left', people: 2 },
        { id: 'right', people: 2 },
        { id: 'other', people: 9 },
      ],
    });
    expect(lowerBound(compilationOf(work).compiled)).toBe(15 * 60);
  });

  it('does not count what only has to be started', () => {
    const work = smallWork(
      [
        { id: 'A', minutes: 60, people: 4 },
        { id: 'end', minutes: 5, people: 4, opens: true },
      ],
      {
        crews: [{ id: 'left', people: 8 }],
        links: [{ from: 'A', to: 'end', counts: 'start', wait: 1 }],
      },
    );
    expect(lowerBound(compilationOf(work).compiled)).toBe(6 * 60);
  });
});
