import { describe, expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { workFaults } from '#domain/tasks/checkWork.ts';
import type { Need } from '#domain/tasks/task.ts';
import type { Crew, Work } from '#domain/tasks/work.ts';
import { plannedTask, planOf } from '#tests/support/planOf.ts';
import { smallWork } from '#tests/support/smallWork.ts';

/** Tasks of 10 minutes for three of a crew of nine, each with what it wants of their skill. */
function welding(wanted: readonly Partial<Need>[], crew: Partial<Crew> = {}): Work {
  const rows = wanted.map((_, at) => ({ id: `weld-${at + 1}`, minutes: 10, people: 3 }));
  const work = smallWork(rows, {
    crews: [{ id: 'left', people: 9, skilled: [{ skill: 'weld', people: 2 }], ...crew }],
  });
  const tasks = work.tasks.map((task, at) => ({
    ...task,
    needs: [{ ...task.needs[0]!, ...wanted[at] }],
  }));
  return { ...work, tasks };
}

const one = { with: [{ skill: 'weld', people: 1 }] };
const two = { with: [{ skill: 'weld', people: 2 }] };

describe('People of a crew who alone have a skill', () => {
  it('are never wanted by more tasks at once than there are of them', () => {
    expect(planOf(welding([one, one])).minutesToOpen).toBe(10);
    expect(planOf(welding([one, one, {}])).minutesToOpen).toBe(10);
    expect(planOf(welding([one, one, one])).minutesToOpen).toBe(20);
    expect(planOf(welding([two, one])).minutesToOpen).toBe(20);
  });

  it('are handed over as such', () => {
    const plan = planOf(welding([two, two]));
    const later = plan.tasks.find(({ start }) => start === 10)!;
    const sooner = plan.tasks.find(({ start }) => start === 0)!;
    expect(plan.handOvers).toContainEqual({
      from: sooner.task,
      to: later.task,
      kind: 'crew',
      of: 'left',
      skill: 'weld',
      people: 2,
    });
    expect(later.reason).toMatchObject({ kind: 'crew', task: sooner.task, of: 'left' });
  });

  it('do alone what everybody on the task must be able to do, and it stretches', () => {
    const people = { least: 1, usual: 3, most: 3 };
    const plan = planOf(welding([{ people, skill: 'weld' }]));
    expect(plannedTask(plan, 'weld-1')).toMatchObject({
      crews: [{ crew: 'left', people: 2 }],
      finish: 15,
    });
  });

  it('are everybody where the whole crew has the skill', () => {
    const all = { skills: ['weld'], skilled: [] };
    expect(planOf(welding([two, two, two], all)).minutesToOpen).toBe(10);
  });

  it('are refused where no crew has as many', () => {
    const three = { with: [{ skill: 'weld', people: 3 }] };
    const plan = makePlan(welding([three]), { shape: 'pert', crews: true });
    expect(!plan.ok && plan.reason).toMatchObject({
      code: 'no-crew-can',
      sentence:
        'No crew can do Task weld-1: it wants any crew with 3 who have the skill weld. Add such a crew, or change who may do it.',
    });
  });

  it('cannot be more than the people of the need', () => {
    const four = { with: [{ skill: 'weld', people: 4 }] };
    expect(workFaults(welding([four]))).toEqual([
      {
        path: '/tasks/0/needs/0/with/0/people',
        found: '4 with weld',
        expected: 'at most the usual 3',
      },
    ]);
  });
});
