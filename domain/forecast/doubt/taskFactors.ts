import type { Plan, PlannedTask } from '../../schedule/plan.ts';
import { stretchOf } from '../../schedule/ways.ts';
import type { Task } from '../../tasks/task.ts';
import type { Work } from '../../tasks/work.ts';
import type { Tick } from '../learn/ticks.ts';
import { conditionsFactor } from './conditions.ts';
import type { Doubt } from './doubt.ts';
import { learningFactor } from './learningCurve.ts';
import { repetitions } from './repetitions.ts';

/** What the minutes of each task are multiplied by for sure, by position in the work: conditions and practice. */
export function taskFactors(work: Work, plan: Plan, doubt: Doubt): Float64Array {
  const conditions = conditionsFactor(doubt);
  if (!doubt.learning.on) return new Float64Array(work.tasks.length).fill(conditions);
  const { rate } = doubt.learning;
  const nth = repetitions(work.tasks, plan);
  return Float64Array.from(
    work.tasks,
    ({ id }) => conditions * learningFactor(nth.get(id) ?? 1, rate),
  );
}

/**
 * Minutes of a task with the people there are now over minutes with the usual people. A crew that has become smaller
 * than the plan has it gives what it has, and no fewer than the task needs at least: below that only a new plan helps.
 */
export function stretchNow(work: Work): (task: Task, planned: PlannedTask) => number {
  const strength = new Map(work.crews.map(({ id, people }) => [id, people]));
  return (task, { crews, stretch }) => {
    const short = crews.some(({ crew, people }) => (strength.get(crew) ?? people) < people);
    if (!short || crews.length !== task.needs.length) return stretch;
    const people = crews.map((each, at) => {
      const { least } = task.needs[at]!.people;
      return Math.max(
        Math.min(each.people, least),
        Math.min(each.people, strength.get(each.crew) ?? each.people),
      );
    });
    return Math.max(stretch, stretchOf(task.needs, people));
  };
}

/** The same with the people there were when a tick began. */
export function stretchThen(
  work: Work,
): (task: Task, planned: PlannedTask, fit: Tick['fit']) => number {
  const now = stretchNow(work);
  return (task, planned, fit) => {
    if (!fit) return now(task, planned);
    const crews = work.crews.map((crew) => ({ ...crew, people: fit[crew.id] ?? crew.people }));
    return stretchNow({ ...work, crews })(task, planned);
  };
}
