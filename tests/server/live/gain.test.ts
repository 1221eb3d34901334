import { expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { gainOf } from '#server/live/gain.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const work = smallWork(
  [
    { id: 'pegs', minutes: 10, crews: ['left', 'right'] },
    { id: 'panel', minutes: 20, crews: ['left', 'right'] },
    { id: 'move', minutes: 5, crews: ['left'], after: ['pegs', 'panel'], opens: true },
  ],
  {
    crews: [
      { id: 'left', people: 1 },
      { id: 'right', people: 1 },
    ],
  },
);

function planOf(crewOf: Record<string, string>): Plan {
  const given = {
    ...work,
    tasks: work.tasks.map((task) => {
      const crew = crewOf[task.id];
      return crew
        ? { ...task, needs: task.needs.map((need) => ({ ...need, anyOf: [crew] })) }
        : task;
    }),
  };
  const plan = makePlan(given, { shape: 'pert', crews: true });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  return plan.value;
}

const together = planOf({ pegs: 'left', panel: 'right' });
const alone = planOf({ pegs: 'left', panel: 'left' });

it('says what a new plan gains and whose orders it changes, both seen from now', () => {
  // Alone one crew takes 10 + 20 + 5 minutes, together 20 + 5.
  expect(gainOf(work, together, alone, 0)).toEqual({
    gain: 'opens 10 min earlier; changes 1 order for 2 crews',
    offer: { gain: 10, changedOrders: 1, crews: ['left', 'right'], needed: false },
  });
  expect(gainOf(work, alone, together, 0).gain).toMatch(/^opens 10 min later/);
  // With changed work, what plan and changes gain together.
  expect(gainOf(work, together, alone, 0, 17.2).gain).toMatch(/^opens 17 min earlier/);
});

it('says when nobody hears of a change', () => {
  expect(gainOf(work, together, together, 0).gain).toBe(
    'opens at the same time; changes no orders',
  );
});

it('has nothing to compare the first plan with', () => {
  expect(gainOf(work, { ...together, minutesToOpen: 286.4 }, null, 0)).toEqual({
    gain: 'first plan: opens 286 min after the start',
    offer: null,
  });
});
