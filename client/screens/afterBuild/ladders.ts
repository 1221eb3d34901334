import type { Review } from '#domain/forecast/after/review.ts';
import { paceWords } from '#domain/forecast/learn/paceWords.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { CrewLadder } from '../../drawing/WorkLadders.tsx';
import { minutes } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** A ladder for each crew of a review, its tasks in the order in which they were finished. */
export function laddersOf(review: Review, tasks: BuildState['tasks']): CrewLadder[] {
  const said = words.after.ladder;
  const finished = (task: string): number => Date.parse(tasks[task]?.finishedAt ?? '') || 0;
  const inOrder = review.tasks.toSorted((one, other) => finished(one.task) - finished(other.task));
  return review.crews.map(({ crew, name, planned, actual }) => ({
    crew,
    name,
    facts: [
      said.head(minutes(planned), minutes(actual)),
      ...(planned > 0 ? [paceWords(actual / planned)] : []),
    ],
    tasks: inOrder.filter(({ crews }) => crews.includes(crew)),
  }));
}

/** The tasks furthest from what was planned, by minutes, the furthest first; not those within two minutes. */
export function furthest({ tasks }: Review, most: number): Review['tasks'] {
  const off = ({ planned, actual }: Review['tasks'][number]): number => Math.abs(actual - planned);
  return tasks
    .filter((task) => off(task) >= 2)
    .toSorted((one, other) => off(other) - off(one))
    .slice(0, most);
}
