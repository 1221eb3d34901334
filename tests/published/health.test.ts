import { describe, expect, it } from 'vitest';
import { criticalPath } from '#domain/schedule/criticalPath.ts';
import { openingMoves } from '#domain/tasks/health/delay.ts';
import type { Finding } from '#domain/tasks/health/finding.ts';
import { healthOf } from '#domain/tasks/health/healthOf.ts';
import { doneIndex, isWithin, marks, pathIndex } from '#domain/tasks/health/marks.ts';
import type { Link, Work } from '#domain/tasks/work.ts';
import { smallWork } from '#tests/support/smallWork.ts';
import { contractor } from './textbookNetworks.ts';

/** 40 tasks in a chain that opens at its end, with so many besides that nothing waits for. */
function withLooseEnds(count: number): Work {
  return smallWork(
    Array.from({ length: 40 }, (_, at) => ({
      id: `t${at}`,
      minutes: 5,
      after: at === 0 ? [] : [at >= 40 - count ? 't0' : `t${at - 1}`],
      opens: at === 39 - count,
    })),
  );
}

/** 51 tasks in a chain of 50 links, of which so many count from a start. */
function withStartLinks(count: number): Work {
  const links = Array.from({ length: 50 }, (_, at): Link => {
    const counts = at < count ? 'start' : 'finish';
    return { from: `t${at}`, to: `t${at + 1}`, counts, wait: 0 };
  });
  const tasks = Array.from({ length: 51 }, (_, at) => ({ id: `t${at}`, minutes: 5 }));
  return smallWork(tasks, { links });
}

function found(work: Work, kind: Finding['kind']): Finding | undefined {
  return healthOf(work, { shape: 'pert', crews: false }).find((one) => one.kind === kind);
}

// The checks and their marks: DCMA-EA PAM 200.1, EVMS Program Analysis Pamphlet, section 4, October 2012 (checks 1 to 7
// as quoted on secondary pages, 13 and 14 from memory); the numbers of the cases are worked out by hand from them.
describe('Published checks of an order of work, in shares', () => {
  it('check 1: 3 of 40 tasks without anything after them are 7.5 % and over the mark, 2 are at it', () => {
    const over = found(withLooseEnds(3), 'nothing-after');
    expect(over).toMatchObject({ weight: 'mend', tasks: ['t37', 't38', 't39'] });
    expect(over?.sentence).toContain('3 of 40 tasks (7.5 %)');
    expect(found(withLooseEnds(2), 'nothing-after')).toMatchObject({
      weight: 'look',
      tasks: ['t38', 't39'],
    });
  });

  it('check 2: no wait is negative', () => {
    const links: Link[] = [{ from: 'a', to: 'b', counts: 'finish', wait: -1 }];
    const work = smallWork(
      ['a', 'b'].map((id) => ({ id, minutes: 5 })),
      { links },
    );
    expect(found(work, 'negative-wait')).toMatchObject({ weight: 'mend', tasks: ['a', 'b'] });
  });

  it('check 4: 46 of 50 links from a finish are 92 % and pass, 44 are 88 % and do not', () => {
    expect(found(withStartLinks(4), 'many-start-links')).toBeUndefined();
    expect(found(withStartLinks(6), 'many-start-links')?.sentence).toContain(
      '6 of 50 links (12 %)',
    );
    expect([isWithin(4, 50, marks.startLinks), isWithin(6, 50, marks.startLinks)]).toEqual([
      true,
      false,
    ]);
  });

  it('check 13: a float of -2 on a path of 44 gives 0.9545 and passes, -3 gives 0.9318 and does not', () => {
    expect(pathIndex(44, -2)).toBeCloseTo(0.9545, 4);
    expect(pathIndex(44, -3)).toBeCloseTo(0.9318, 4);
    const weightAsked = (askedFor: number) =>
      healthOf(contractorWork, { shape: 'pert', crews: false, askedFor }).find(
        ({ kind }) => kind === 'asked-too-early',
      )?.weight;
    expect([weightAsked(44), weightAsked(42), weightAsked(41)]).toEqual([
      undefined,
      'look',
      'mend',
    ]);
  });

  it('check 14: 19 of 20 tasks done are at the mark, 18 are under it', () => {
    expect(doneIndex(19, 20)).toBe(marks.doneIndex);
    expect(doneIndex(18, 20)).toBeLessThan(marks.doneIndex);
    expect(doneIndex(18, 20)).toBeCloseTo(0.9, 12);
  });
});

const contractorWork = smallWork(
  contractor.map(({ id, minutes, after = [] }) => ({
    id,
    minutes: minutes as [number, number, number],
    after,
  })),
);

// Check 12 (from memory of the pamphlet) on Hillier and Lieberman's building contractor (44 weeks); 644 and 643 are
// worked out by hand: J is critical, K has a float of 1.
describe('The delay test on the building contractor', () => {
  const later = (task: string, by: number) => ({
    ...contractorWork,
    tasks: contractorWork.tasks.map((one) => {
      const { quick, likely, slow } = one.minutes;
      return one.id === task
        ? { ...one, minutes: { quick: quick + by, likely: likely + by, slow: slow + by } }
        : one;
    }),
  });
  const minutesOf = (work: Work) => {
    const critical = criticalPath(work, 'pert');
    return critical.ok ? critical.value.minutes : Number.NaN;
  };

  it('moves the finish by the whole delay for J and by one less for K', () => {
    expect(minutesOf(later('J', 600))).toBe(644);
    expect(minutesOf(later('K', 600))).toBe(643);
    const moves = openingMoves(contractorWork, 'pert', 600);
    expect([moves.get('J'), moves.get('K')]).toEqual([600, 599]);
  });

  it('finds nothing wrong with any critical task of it', () => {
    expect(found(contractorWork, 'delay-test')).toBeUndefined();
  });
});
