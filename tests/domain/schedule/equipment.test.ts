import { describe, expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { reasonSentence } from '#domain/schedule/reasonSentence.ts';
import type { Work } from '#domain/tasks/work.ts';
import { plannedTask, planOf } from '#tests/support/planOf.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const crews = ['left', 'right', 'brace'].map((id) => ({ id, people: 4 }));

/** Three jacking jobs of three crews, two of them with a jack each and one with two. */
function jacking(count: number): Work {
  const jacks = { left: 1, right: 1, brace: 2 };
  const tasks = Object.entries(jacks).map(([crew, held]) => ({
    id: `lift-${crew}`,
    minutes: 10,
    people: 4,
    crews: [crew],
    equipment: [{ id: 'jack', count: held }],
  }));
  return { ...smallWork(tasks, { crews }), equipment: [{ id: 'jack', name: 'Jack', count }] };
}

describe('Equipment', () => {
  it('lets as many tasks run at once as there is of it', () => {
    expect(planOf(jacking(4)).minutesToOpen).toBe(10);
    expect(planOf(jacking(3)).minutesToOpen).toBe(20);
    expect(planOf(jacking(2)).minutesToOpen).toBe(20);
  });

  it('makes tasks wait without any crews too', () => {
    expect(planOf(jacking(2), { crews: false }).minutesToOpen).toBe(20);
  });

  it('is handed over by name, and the reason says so', () => {
    const work = jacking(2);
    const plan = planOf(work);
    const last = plan.tasks.find(({ start }) => start === 10)!;
    const given = plan.handOvers.filter(({ to }) => to === last.task);
    expect(given.reduce((sum, { people }) => sum + people, 0)).toBe(
      last.task === 'lift-brace' ? 2 : 1,
    );
    for (const arc of given) expect(arc).toMatchObject({ kind: 'equipment', of: 'jack' });
    expect(last.reason).toMatchObject({ kind: 'equipment', of: 'jack' });
    expect(reasonSentence(work, last.reason)).toBe(`Jack comes free from ${last.reason.task}`);
  });

  it('is enough where nobody says how much there is', () => {
    const { equipment: _, ...work } = jacking(2);
    expect(planOf(work).minutesToOpen).toBe(10);
  });

  it('that a task at work holds comes free when it ends', () => {
    const work = jacking(2);
    const crew = [{ crew: 'brace', people: 4 }];
    const past = {
      now: 5,
      tasks: [{ task: 'lift-brace', status: 'at-work', start: 0, crews: crew }],
    } as const;
    const plan = planOf(work, { past });
    expect(plannedTask(plan, 'lift-left')).toMatchObject({
      start: 10,
      reason: { kind: 'equipment', task: 'lift-brace', of: 'jack' },
    });
  });

  it('that there is not enough of for a task is a fault of the work', () => {
    const work = jacking(1);
    const plan = makePlan(work, { shape: 'pert', crews: true });
    expect(!plan.ok && plan.reason).toMatchObject({
      code: 'work-faulty',
      sentence:
        'Mend the order of work at /tasks/2/equipment/0/count: found 2 of jack, expected at most the 1 there are.',
    });
  });
});
