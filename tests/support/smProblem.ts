import { buildProblem, type Problem } from '#domain/schedule/search/problem.ts';
import type { SmInstance } from './smInstance.ts';

/** The instance without its source and sink, which take no time and no units. */
export function smProblem(instance: SmInstance): Problem {
  const inner = (job: number) => job > 0 && job < instance.jobs - 1;
  const links = instance.successors.flatMap((successors, job) =>
    successors
      .filter((next) => inner(job) && inner(next))
      .map((next) => ({ from: job - 1, to: next - 1, lag: instance.durations[job]! })),
  );
  return buildProblem({
    durations: instance.durations.slice(1, -1),
    demands: instance.demands.slice(1, -1),
    capacities: instance.capacities,
    links,
  });
}

/** Starts by job of the instance from starts by task of its problem. */
export function smStarts(starts: Int32Array, makespan: number): number[] {
  return [0, ...starts, makespan];
}
