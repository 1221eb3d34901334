import type { Plan } from '#domain/schedule/plan.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';
import { planOf, type Row, workOf } from './smallNetwork.ts';

/** A task of a small work with the crew that does it. */
export type CrewedRow = Row & {
  readonly crew?: string;
  readonly more?: Partial<Task>;
};

/** A work of crews of six people, each task done by six of the crew it names. */
export function crewedWork(crews: readonly string[], rows: readonly CrewedRow[] = []): Work {
  const work = workOf(rows.length > 0 ? rows : [{ id: 'a', minutes: [1, 2, 3] }]);
  return {
    ...work,
    tasks: work.tasks.map((task, k) => {
      const { crew, more } = rows[k] ?? {};
      const people = { least: 2, usual: 6, most: 8 };
      const needs = crew ? [{ anyOf: [crew], people }] : [];
      return { ...task, needs, ...more };
    }),
    crews: crews.map((id) => ({ id, name: id, people: 6, skills: [], attached: false })),
  };
}

/** The plan of such a work: each task with its crew. */
export function crewedPlan(work: Work, options: Parameters<typeof planOf>[1] = {}): Plan {
  const plan = planOf(work, options);
  return {
    ...plan,
    tasks: plan.tasks.map((planned, k) => ({
      ...planned,
      crews: work.tasks[k]!.needs.map(({ anyOf, people }) => ({
        crew: anyOf[0]!,
        people: people.usual,
      })),
    })),
  };
}
