import type { PlannedTask } from '../../schedule/plan.ts';
import { stretchOf } from '../../schedule/ways.ts';
import type { Task } from '../../tasks/task.ts';
import type { Work } from '../../tasks/work.ts';
import type { Seen } from './seen.ts';

/**
 * The build with so many more people in a crew from now on. First they fill up what the crew has lost; the rest go, in
 * the order of the plan, each to one task at a time that can use more (up to the most it takes and the room there is).
 * Minutes never grow with more people.
 */
export function withMorePeople(seen: Seen, crew: string, count: number): Seen {
  const { work, plan, past } = seen;
  const tasks = new Map(work.tasks.map((task) => [task.id, task]));
  const begun = new Set(past.tasks.map(({ task }) => task));
  const has = work.crews.find(({ id }) => id === crew)?.people ?? 0;
  const own = plan.tasks
    .filter(({ task, crews }) => !begun.has(task) && crews.some((each) => each.crew === crew))
    .toSorted((one, other) => one.start - other.start);
  const wanted = own.map(({ crews }) => crews.find((each) => each.crew === crew)!.people);
  const lost = Math.max(0, ...wanted.map((people) => people - has));
  // When each of the people who are left over comes free again, by the times of the plan.
  const free = new Array<number>(Math.max(0, count - lost)).fill(Number.NEGATIVE_INFINITY);
  const stretches = new Map<string, number>();
  for (const planned of own) {
    const task = tasks.get(planned.task);
    if (!task) continue;
    let more = 0;
    for (let person = 0; person < free.length; person++) {
      if (free[person]! > planned.start || more >= roomFor(work, task, planned, crew)) continue;
      free[person] = planned.finish;
      more++;
    }
    const people = planned.crews.map((each) => each.people + (each.crew === crew ? more : 0));
    if (more > 0 && people.length === task.needs.length) {
      stretches.set(task.id, Math.min(planned.stretch, stretchOf(task.needs, people)));
    }
  }
  return {
    ...seen,
    work: {
      ...work,
      crews: work.crews.map((each) =>
        each.id === crew ? { ...each, people: each.people + count } : each,
      ),
    },
    plan: {
      ...plan,
      tasks: plan.tasks.map((planned) => ({
        ...planned,
        stretch: stretches.get(planned.task) ?? planned.stretch,
      })),
    },
  };
}

/** How many more of the crew a task can use. */
function roomFor({ zones }: Work, task: Task, { crews }: PlannedTask, crew: string): number {
  const at = crews.findIndex((each) => each.crew === crew);
  const most = (task.needs[at]?.people.most ?? 0) - crews[at]!.people;
  const all = crews.reduce((sum, { people }) => sum + people, 0);
  const room = zones
    .filter(({ id, room: places }) => task.zones.includes(id) && places !== undefined)
    .map(({ room: places }) => places! - all);
  return Math.max(0, Math.min(most, ...room));
}
