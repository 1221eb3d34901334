import { criticalPathLength } from '#domain/schedule/search/problem.ts';
import { search } from '#domain/schedule/search/search.ts';
import { checkSm } from '#tests/support/checkSm.ts';
import { smProblem, smStarts } from '#tests/support/smProblem.ts';
import type { Listed } from './instances.ts';

/** How each instance is scheduled. */
export type RowOptions = {
  readonly seed: number;
  readonly schedules: number | null;
  readonly seconds: number | null;
};

export type Row = ReturnType<typeof scheduleRow>;

/** Schedules one instance and has the independent checker look at it. Throws at what the checker finds. */
export function scheduleRow(listed: Listed, options: RowOptions) {
  const { name, instance, bestKnown } = listed;
  const { seed, schedules, seconds } = options;
  const began = performance.now();
  const problem = smProblem(instance);
  const found = search(problem, {
    seed,
    ...(schedules !== null && { schedules }),
    shouldStop: () => seconds !== null && performance.now() - began > seconds * 1000,
  });
  const took = (performance.now() - began) / 1000;
  const { faults, makespan } = checkSm(instance, smStarts(found.starts, found.length));
  if (faults.length > 0) throw new Error(`${name}: ${faults.join('; ')}`);
  const path = listed.criticalPath ?? criticalPathLength(problem);
  const overBest = bestKnown === undefined ? null : makespan - bestKnown;
  return {
    instance: name,
    makespan,
    lowerBound: found.lower,
    proven: makespan === found.lower,
    schedules: Math.round(found.schedules),
    seconds: took,
    overCriticalPath: (100 * (makespan - path)) / path,
    overBest: overBest === null ? null : (100 * overBest) / (bestKnown as number),
    pointsOverBest: overBest === null ? null : (100 * overBest) / path,
    reached: overBest === null ? null : overBest <= 0,
  };
}
