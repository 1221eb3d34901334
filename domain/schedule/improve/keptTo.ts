import { courseOf } from '../../forecast/course.ts';
import { stretchNow } from '../../forecast/doubt/taskFactors.ts';
import type { Work } from '../../tasks/work.ts';
import type { Past } from '../past.ts';
import type { Plan } from '../plan.ts';
import { stretchAsManned } from '../settled.ts';
import { strengths } from '../strength.ts';

/** A plan and the order of work that it is kept to in: loads and nights as they are known now. */
export type PlannedWork = { readonly work: Work; readonly plan: Plan };

/** What stands against keeping to a plan: it is for other tasks, or a crew is smaller than its tasks to come take. */
export function hindrance({ work, plan }: PlannedWork, past: Past): 'tasks' | 'people' | null {
  const planned = new Set(plan.tasks.map(({ task }) => task));
  if (planned.size !== work.tasks.length || work.tasks.some(({ id }) => !planned.has(id))) {
    return 'tasks';
  }
  const begun = begunOf(past);
  const people = new Map(atStrongest(work).crews.map((crew) => [crew.id, crew.people]));
  const lacks = plan.tasks
    .filter(({ task }) => !begun.has(task))
    .some(({ crews }) => crews.some((each) => each.people > (people.get(each.crew) ?? 0)));
  return lacks ? 'people' : null;
}

/**
 * Minutes after the start of the build at which a plan opens when it is kept to from `past.now` on: its course, with
 * what is at work manned as told, and what is to come by a crew grown smaller done with the people who are left. Throws
 * when plan and work do not belong together.
 */
export function opensKeptTo({ work, plan }: PlannedWork, past: Past): number {
  const begun = begunOf(past);
  const tasks = new Map(work.tasks.map((task) => [task.id, task]));
  const stretchToCome = stretchNow(atStrongest(work));
  const manned = plan.tasks.map((own) => {
    const task = tasks.get(own.task);
    if (!task) throw new Error(`There is no task ${own.task} in the work.`);
    const before = begun.get(own.task);
    return {
      ...own,
      stretch: before ? stretchAsManned(task, before.crews) : stretchToCome(task, own),
    };
  });
  return courseOf(work, { ...plan, tasks: manned }, past).opening;
}

/** Tasks done or at work; a stopped one can still go to others. */
export function begunOf({ tasks }: Past): ReadonlyMap<string, Past['tasks'][number]> {
  return new Map(
    tasks.filter(({ status }) => status !== 'stopped').map((before) => [before.task, before]),
  );
}

/** The work with as many people in every crew as it ever has at once: those lent to it, or who come later, count. */
function atStrongest(work: Work): Work {
  const steps = strengths(work);
  const crews = work.crews.map((crew, row) => ({
    ...crew,
    people: Math.max(...steps[row]!.map(({ people }) => people)),
  }));
  return { ...work, crews };
}
