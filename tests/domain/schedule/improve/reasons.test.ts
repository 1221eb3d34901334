import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gains } from '#domain/schedule/improve/gains.ts';
import { idleTimes } from '#domain/schedule/improve/idleTimes.ts';
import { openingChain } from '#domain/schedule/improve/openingChain.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const common = { shape: 'pert', crews: true } as const;

function planOf(work: Work): Plan {
  const plan = makePlan(work, { ...common, effort: 40 });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  return plan.value;
}

// Worked out by hand: the left carries A, then B, for B waits for its people; the right is there for C and, at the end, D.
const work = smallWork(
  [
    { id: 'A', minutes: 10, people: 4, crews: ['left'] },
    { id: 'B', minutes: 20, people: 4, crews: ['left'], after: ['C'] },
    { id: 'C', minutes: 5, people: 2, crews: ['right'] },
    { id: 'D', minutes: 5, people: 2, crews: ['right'], after: ['A', 'B'] },
  ],
  {
    crews: [
      { id: 'left', people: 4 },
      { id: 'right', people: 2 },
    ],
  },
);

describe('The chain to the opening', () => {
  it('leads from the start through crews and links', () => {
    const steps = openingChain(planOf(work), work);
    expect(steps.map(({ planned, why }) => `${planned.task} ${why}`)).toEqual([
      'A starts with the build',
      'B people of left come free from A',
      'D waits for B',
    ]);
  });

  it('joins end to start, with only waits of links between', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const any = randomWork(seed, { tasks: 25, crews: 3, zones: 2, joint: true, keepOff: true });
        const plan = planOf(any);
        const steps = openingChain(plan, any).map(({ planned }) => planned);
        expect(steps[0]?.reason.task).toBeUndefined();
        expect(steps.at(-1)?.finish).toBe(plan.minutesToOpen);
        for (const [at, own] of steps.slice(1).entries()) {
          expect(own.start).toBeCloseTo(steps[at]!.finish, 6);
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe('Idle time', () => {
  it('is what the people of a crew wait between its first and its last work', () => {
    expect(idleTimes(work, planOf(work))).toEqual([
      { crew: 'left', personMinutes: 0, firstWork: 0, lastWork: 30 },
      { crew: 'right', personMinutes: 50, firstWork: 0, lastWork: 35 },
    ]);
  });

  it('is nothing for a crew without work', () => {
    const spare = { ...work, crews: [...work.crews, { ...work.crews[0]!, id: 'spare' }] };
    expect(idleTimes(spare, planOf(spare))[2]).toEqual({
      crew: 'spare',
      personMinutes: 0,
      firstWork: null,
      lastWork: null,
    });
  });
});

describe('What one more person would gain', () => {
  it('is found by planning again for each crew', () => {
    // Three half-crew jobs by five people take two rounds; by six, one.
    const rows = ['A', 'B', 'C'].map((id) => ({
      id,
      minutes: 10,
      people: 2,
      crews: ['left'],
    }));
    const short = smallWork([...rows, { id: 'D', minutes: 4, crews: ['right'] }], {
      crews: [
        { id: 'left', people: 5 },
        { id: 'right', people: 2 },
      ],
    });
    const heard: number[] = [];
    const found = gains(short, common, { onProgress: (done) => heard.push(done) });
    expect(found).toEqual([
      { crew: 'left', minutesEarlier: 10 },
      { crew: 'right', minutesEarlier: 0 },
    ]);
    expect(heard).toEqual([1, 2, 3]);
  });

  it('can be broken off', () => {
    expect(gains(work, common, { shouldStop: () => true })).toEqual([]);
  });
});
