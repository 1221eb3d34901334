import { Population } from './population.ts';
import { criticalPathLength, type Problem } from './problem.ts';
import { Random } from './random.ts';
import { type Individual, Sides } from './sides.ts';

/** A schedule found, with the work it took. One schedule counts as many placements as there are tasks. */
export type Found = {
  /** Forward starts by task, in whole units. */
  readonly starts: Int32Array;
  readonly length: number;
  /** No schedule is shorter; equal to `length` where the search ended by itself. */
  readonly bound: number;
  readonly schedules: number;
};

/**
 * Searches for a short schedule with a population of doubly justified schedules, up to `budget` schedules or until
 * `shouldStop`, and stops by itself when nothing shorter can exist. The same seed and budget give the same schedule.
 * `report` is told of every better one as it is found.
 */
export function populationSearch(
  problem: Problem,
  options: {
    readonly seed: number;
    readonly budget: number;
    readonly shouldStop?: () => boolean;
    readonly report?: (length: number, schedules: number) => void;
  },
): Found {
  const { seed, budget, shouldStop = () => false, report } = options;
  const effort = { placements: 0 };
  const sides = new Sides(problem, effort);
  const bound = criticalPathLength(problem);
  const schedules = () => effort.placements / Math.max(1, problem.tasks);
  let best: Individual | null = null;
  const population = new Population(sides, new Random(seed), (found) => {
    if (best !== null && found.length >= best.length) return;
    best = found;
    report?.(found.length, schedules());
  });
  const open = () =>
    schedules() < budget && (best === null || best.length > bound) && !shouldStop();
  // Larger budgets can afford to stay varied for longer; measured on generated instances, not derived.
  const first = Math.max(2, Math.min(400, Math.round(1.4 * Math.sqrt(budget))));
  for (let drawn = 0; drawn < first && (best === null || open()); drawn++) population.sample();
  while (population.members.length >= 2 && open()) population.breed();
  if (best === null) throw new Error('no schedule was made: the population starts with one');
  const { length } = best as Individual;
  return { starts: sides.forwardStarts(best), length, bound, schedules: schedules() };
}
