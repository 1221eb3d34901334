import type { Compilation } from '../compile.ts';
import type { Plan } from '../plan.ts';
import { emptySchedule, type Schedule } from '../schedule.ts';
import type { Way } from '../ways.ts';

/**
 * A plan as keys to take tasks by: starts and ways by number, in seconds. Tasks that the plan does not have come last;
 * a way that no longer exists becomes the one with most of the same crews, and the people of each nearest to what it had.
 */
export function scheduleLike(compilation: Compilation, crewIds: string[], plan: Plan): Schedule {
  const { compiled, tasks, ways } = compilation;
  const schedule = emptySchedule(compiled);
  const byId = new Map(plan.tasks.map((own) => [own.task, own]));
  for (const [number, task] of tasks.entries()) {
    const own = byId.get(task.id);
    schedule.start[number] = own ? own.start * 60 : plan.minutesToOpen * 60;
    if (!own) {
      continue;
    }
    const people = new Map(own.crews.map((one) => [one.crew, one.people]));
    const likeness = ({ crews }: Way) =>
      crews.reduce((sum, one) => {
        const had = people.get(crewIds[one.crew]!);
        return sum + (had === undefined ? 0 : 1 + 1 / (1 + Math.abs(had - one.people)));
      }, 0);
    let most = -1;
    for (let w = compiled.wayHead[number]!; w < compiled.wayHead[number + 1]!; w += 1) {
      if (likeness(ways[w]!) > most) {
        most = likeness(ways[w]!);
        schedule.way[number] = w;
      }
    }
  }
  return schedule;
}
