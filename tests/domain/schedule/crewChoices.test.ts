import { describe, expect, it } from 'vitest';
import { eachChoice, spreadChoices } from '#domain/schedule/crewChoices.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';

const nobody = -1;
const anyOf = (crews: number) =>
  Array.from({ length: crews }, (_, crew) => ({ crew, people: [1] }));

describe('choices of crews', () => {
  it('give every need a crew of its own, each choice once', () => {
    const seen = new Set<string>();
    const isWhole = eachChoice([anyOf(5), anyOf(5), anyOf(5)], nobody, ({ crews }) => {
      expect(new Set(crews).size).toBe(3);
      seen.add(crews.join());
      return 'more';
    });
    expect(isWhole).toBe(true);
    expect(seen.size).toBe(5 * 4 * 3);
  });

  it('say so when they are broken off', () => {
    expect(eachChoice([anyOf(3)], nobody, () => 'enough')).toBe(false);
  });

  it('use all crews alike where there are too many to go through', () => {
    const uses = new Array(12).fill(0);
    spreadChoices([anyOf(12), anyOf(12), anyOf(12)], nobody, 40, ({ crews }) => {
      for (const crew of crews) uses[crew] += 1;
      return true;
    });
    expect(Math.max(...uses) - Math.min(...uses)).toBeLessThanOrEqual(1);
  });
});

describe('a plan of joint tasks that can be manned in more ways than are listed', () => {
  const need = { anyOf: [], people: { least: 1, usual: 1, most: 1 } };
  const jobs: Work = {
    tasks: Array.from({ length: 4 }, (_, at) => ({
      id: `t${at}`,
      number: at + 1,
      name: `Job ${at}`,
      phase: '',
      needs: [need, need, need],
      minutes: { quick: 10, likely: 10, slow: 10 },
      zones: [],
      keepOff: false,
      opens: false,
      cautions: [],
      tools: [],
      loads: [],
    })),
    links: [],
    crews: Array.from({ length: 12 }, (_, at) => ({
      id: `c${at}`,
      name: `Crew ${at}`,
      people: 1,
      skills: [],
      attached: false,
    })),
    zones: [],
    loads: [],
  };

  it('puts all crews to work at once', () => {
    const plan = makePlan(jobs, { shape: 'pert', crews: true });
    if (!plan.ok) throw new Error(plan.reason.sentence);
    expect(checkPlan(jobs, plan.value, { crews: true })).toEqual([]);
    expect(plan.value.minutesToOpen).toBe(10);
    expect(plan.value.lowerBound).toBe(10);
  });

  it('claims no bound that rests on the listed ways alone', () => {
    // One more job than can run at once: two rounds are needed, one round is all the bound may say without the ways.
    const more = { ...jobs, tasks: [...jobs.tasks, { ...jobs.tasks[0]!, id: 't4', number: 5 }] };
    const plan = makePlan(more, { shape: 'pert', crews: true });
    if (!plan.ok) throw new Error(plan.reason.sentence);
    expect(plan.value.minutesToOpen).toBe(20);
    expect(plan.value.lowerBound).toBeLessThanOrEqual(20);
  });
});
