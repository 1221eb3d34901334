import { plannedTask } from '#domain/progress/plannedCrews.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { crewLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { words } from '../../../words/words.ts';
import { peopleShort } from '../draft/changeWords.ts';

/** More crews than these are counted, not named: nobody reads the list. */
const mostNamed = 8;

/** Who does a task: crews and people by plan, else what it needs. "Left girder 6, Bracing 2". */
export function crewsWords(state: Pick<BuildState, 'plan' | 'work'>, task: Task): string {
  const planned = plannedTask(state.plan, task.id)?.crews.filter(({ people }) => people > 0) ?? [];
  if (planned.length > mostNamed) {
    const people = planned.reduce((sum, one) => sum + one.people, 0);
    return words.task.manyCrews(planned.length, people);
  }
  if (planned.length > 0) {
    return planned.map(({ crew, people }) => `${crewLabel(state, crew)} ${people}`).join(', ');
  }
  if (task.needs.length > mostNamed) {
    const people = task.needs.reduce((sum, one) => sum + one.people.usual, 0);
    return words.task.manyCrews(task.needs.length, people);
  }
  return needsWords(state, task);
}

/** What a task needs, with least, usual and most. "Left girder 4-6-8". */
export function needsWords(state: Pick<BuildState, 'work'>, task: Task): string {
  return task.needs
    .map(({ anyOf, people }) => {
      const crews = anyOf.map((crew) => crewLabel(state, crew)).join(words.task.orWords);
      return `${crews === '' ? words.task.anyCrew : crews} ${peopleShort(people)}`;
    })
    .join(', ');
}
