import { expect, it } from 'vitest';
import { openingChain } from '#domain/schedule/improve/openingChain.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { demoBuild } from '#tests/bench/demoBuild.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { replay } from '#tests/support/replay.ts';

// The delay test (DCMA-EA PAM 200.1, check 12, from memory) on a plan with crews: over fixed hand-overs, each task of
// the chain that the next one waits to be finished moves the opening by the whole of a large delay.
const delay = 600;

function openings(work: Work, plan: Plan): { task: string; moved: number }[] {
  const opensAt = (late: string | null, factor: number) =>
    replay(work, plan, (row) => (work.tasks[row]?.id === late ? factor : 1)).get(plan.opening)!
      .finish;
  const steps = openingChain(plan, work);
  const before = opensAt(null, 1);
  return steps.flatMap(({ planned }, at) => {
    const next = steps[at + 1]?.planned;
    const minutes = planned.finish - planned.start;
    const byStart =
      next?.reason.kind === 'link' &&
      work.links.some(
        ({ from, to, counts }) => from === planned.task && to === next.task && counts === 'start',
      );
    if (minutes === 0 || byStart) return [];
    const moved = opensAt(planned.task, (minutes + delay) / minutes) - before;
    return [{ task: planned.task, moved }];
  });
}

it('holds for every task of the chain to the opening of the demo build', () => {
  const { work, plan } = demoBuild(50);
  const moved = openings(work, plan);
  expect(moved.length).toBeGreaterThan(30);
  expect(moved.filter((one) => Math.abs(one.moved - delay) > 1 / 60)).toEqual([]);
});

it('holds in crowded orders of work, through crews and zones as well as links', () => {
  for (let seed = 1; seed <= 20; seed += 1) {
    const work = randomWork(seed, { tasks: 40, crews: 3, zones: 2, joint: true, keepOff: true });
    const plan = makePlan(work, { shape: 'pert', crews: true, effort: 20 });
    if (!plan.ok) throw new Error(plan.reason.sentence);
    const wrong = openings(work, plan.value).filter((one) => Math.abs(one.moved - delay) > 1 / 60);
    expect(wrong).toEqual([]);
  }
});
