import type { SmInstance } from './smInstance.ts';

/**
 * Checks starts (by job, source and sink included) against the instance from the rules alone: nothing starts before what
 * it comes after has finished, and in every moment the demands of what runs are within the capacities. Returns the faults
 * found and the finish of the sink.
 */
export function checkSm(
  instance: SmInstance,
  starts: readonly number[],
): { readonly faults: readonly string[]; readonly makespan: number } {
  const faults: string[] = [];
  const { jobs, durations, successors, demands, capacities } = instance;
  for (let job = 0; job < jobs; job++) {
    const start = starts[job];
    if (start === undefined || !Number.isInteger(start) || start < 0) {
      faults.push(`job ${job + 1} has no whole start from 0 on`);
      continue;
    }
    for (const next of successors[job]!) {
      if ((starts[next] ?? -1) < start + durations[job]!) {
        faults.push(`job ${next + 1} starts before job ${job + 1} has finished`);
      }
    }
  }
  const makespan = Math.max(...starts.map((start, job) => start + durations[job]!));
  for (let moment = 0; moment < makespan; moment++) {
    capacities.forEach((capacity, resource) => {
      let used = 0;
      for (let job = 0; job < jobs; job++) {
        if (starts[job]! <= moment && moment < starts[job]! + durations[job]!) {
          used += demands[job]![resource]!;
        }
      }
      if (used > capacity) {
        faults.push(`resource ${resource + 1} gives ${used} of ${capacity} at ${moment}`);
      }
    });
  }
  return { faults, makespan };
}
