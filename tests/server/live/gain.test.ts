import { expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Past } from '#domain/schedule/past.ts';
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

const none: Past = { now: 0, tasks: [] };
const together = planOf({ pegs: 'left', panel: 'right' });
const alone = planOf({ pegs: 'left', panel: 'left' });

it('says what a new plan gains and whose orders it changes, both seen from now', () => {
  // Alone one crew takes 10 + 20 + 5 minutes, together 20 + 5.
  expect(gainOf({ work, plan: together }, { work, plan: alone }, none)).toEqual({
    gain: 'opens 10 min earlier; changes 1 order for 2 crews',
    offer: {
      gain: 10,
      opens: 25,
      acceptedOpens: 35,
      changedOrders: 1,
      crews: ['left', 'right'],
      needed: false,
    },
  });
  const back = gainOf({ work, plan: alone }, { work, plan: together }, none);
  expect(back.gain).toMatch(/^opens 10 min later/);
});

it('says what plan and changes gain together, even where the plan in force lacks people', () => {
  const [left, right] = work.crews;
  const told = { ...work, crews: [left!, { ...right!, people: 0 }] };
  const quicker = {
    ...told,
    tasks: told.tasks.map((task) =>
      task.id === 'panel' ? { ...task, minutes: { quick: 3, likely: 3, slow: 3 } } : task,
    ),
  };
  // By hand: all by the left crew, 10 + 3 + 5, where the plan in force takes 20 + 5 with the people it has not.
  const fresh = { work: quicker, plan: alone };
  const inForce = { work: told, plan: together };
  expect(gainOf(fresh, inForce, none).offer).toMatchObject({ gain: 0, needed: true });
  expect(gainOf(fresh, inForce, none, true).offer).toMatchObject({
    gain: 7,
    opens: 18,
    acceptedOpens: 25,
    needed: false,
  });
});

it('says when nobody hears of a change', () => {
  const same = { work, plan: together };
  expect(gainOf(same, same, none).gain).toBe('opens at the same time; changes no orders');
});

it('has nothing to compare the first plan with', () => {
  expect(gainOf({ work, plan: { ...together, minutesToOpen: 286.4 } }, null, none)).toEqual({
    gain: 'first plan: opens 286 min after the start',
    offer: null,
  });
});
