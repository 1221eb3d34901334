import type { Crew } from '../../tasks/work.ts';
import type { PlayedTask } from './played.ts';

/** What the tasks of one crew took against the plan. Minutes; a joint task counts for each of its crews. */
export type CrewReview = {
  readonly crew: string;
  readonly name: string;
  readonly tasks: number;
  readonly planned: number;
  readonly actual: number;
};

/** The crews that finished anything, in the order of `crews`. */
export function byCrew(played: readonly PlayedTask[], crews: readonly Crew[]): CrewReview[] {
  return crews.flatMap(({ id, name }): CrewReview[] => {
    const own = played.filter((task) => task.crews.includes(id));
    if (own.length === 0) return [];
    const sum = (key: 'planned' | 'actual') => own.reduce((total, task) => total + task[key], 0);
    return [{ crew: id, name, tasks: own.length, planned: sum('planned'), actual: sum('actual') }];
  });
}
