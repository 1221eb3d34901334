import type { Past } from '../../schedule/past.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { Work } from '../../tasks/work.ts';

/** The crews that did, do or will do each task of the work, by its position: those told, else those of the plan. */
export function crewsOf(work: Work, plan: Plan, past: Past | undefined): string[][] {
  const planned = new Map(plan.tasks.map(({ task, crews }) => [task, crews]));
  const told = new Map(past?.tasks.map(({ task, crews }) => [task, crews]));
  return work.tasks.map(({ id }) => {
    const crews = told.get(id)?.length ? told.get(id)! : (planned.get(id) ?? []);
    return crews.filter(({ people }) => people > 0).map(({ crew }) => crew);
  });
}
