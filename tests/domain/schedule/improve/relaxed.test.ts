import { expect, it } from 'vitest';
import { headsAndTails } from '#domain/schedule/headsAndTails.ts';
import { RelaxedBound } from '#domain/schedule/improve/relaxed/relaxedBound.ts';
import { relaxedOf } from '#domain/schedule/improve/relaxed/relaxedOf.ts';
import { lowerBound } from '#domain/schedule/lowerBound.ts';
import type { Work } from '#domain/tasks/work.ts';
import { compilationOf } from '#tests/support/compilationOf.ts';
import { exactOpening } from '#tests/support/exactOpening.ts';
import { smallWork } from '#tests/support/smallWork.ts';
import { tightWork } from '#tests/support/tightWork.ts';

/** The bound when it has nothing more to gain, and the one by paths and people, in minutes. */
function boundsOf(work: Work, opening: number) {
  const compiled = compilationOf(work).forBounds;
  const plain = lowerBound(compiled);
  const relaxed = relaxedOf(compiled, headsAndTails(compiled), 60 * opening);
  const bound = new RelaxedBound(relaxed, plain, 1);
  while (!bound.isDone) bound.run(1000, () => false);
  return { plain: plain / 60, lower: bound.lower / 60 };
}

type People = readonly [number, number, number];

/** Of five people, three at a time: one task of three after the other, with those of two beside them. */
function cramped(minutes = 10, first: People = [3, 3, 3]): Work {
  return smallWork(
    [
      { id: 't1', minutes, people: first },
      { id: 't2', minutes, people: 3 },
      { id: 't3', minutes, people: 3 },
      { id: 't4', minutes: minutes / 2, people: 2, after: ['t1'] },
    ],
    { crews: [{ id: 'crew', people: 5 }] },
  );
}

it('Tasks for which there are not enough people at once are counted one after the other', () => {
  const { plain, lower } = boundsOf(cramped(), 40);
  expect(plain).toBeLessThan(30);
  expect(lower).toBe(30);
});

it('A task that more people make quicker counts with its fewest people and its least minutes', () => {
  // Two people, and the minutes that four would need: beside a task of three there is room for them.
  expect(boundsOf(cramped(10, [2, 2, 4]), 40).lower).toBe(20);
});

it('In units too coarse for the minutes the bound is a little lower, never higher', () => {
  const { lower } = boundsOf(cramped(602), 3 * 602 + 7 / 60);
  expect(lower).toBeLessThanOrEqual(3 * 602);
  expect(lower).toBeGreaterThan(0.99 * 3 * 602);
});

it('On small crowded works it never passes the optimum that an exact model finds', () => {
  for (let seed = 1; seed <= 25; seed += 1) {
    const work = tightWork(seed);
    const best = exactOpening(work);
    expect(boundsOf(work, best).lower, `seed ${seed}`).toBeLessThanOrEqual(best + 1e-6);
  }
});
