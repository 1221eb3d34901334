import { headsAndTails, type Problem } from '../search/problem.ts';

/**
 * Energy bound: the tasks that cannot start before some moment and must be followed by some time still hold their
 * units times minutes between the two, and no resource gives more than its capacity. The best over all resources, moments
 * and followings; at least the critical path.
 */
export function energyBound(problem: Problem): number {
  const { heads, tails } = headsAndTails(problem);
  const { tasks, resources, durations, demands, capacities } = problem;
  const order = Array.from({ length: tasks }, (_, task) => task);
  const byHead = [...order].sort((a, b) => heads[b]! - heads[a]!);
  // What follows a task once it has finished.
  const after = tails.map((tail, task) => tail - durations[task]!);
  const followings = [...new Set(after)];
  let bound = tails.reduce((longest, tail, task) => Math.max(longest, heads[task]! + tail), 0);
  for (let resource = 0; resource < resources; resource++) {
    for (const following of followings) {
      let energy = 0;
      for (const task of byHead) {
        if (after[task]! < following) continue;
        const units = demands[task * resources + resource]!;
        energy += units * durations[task]!;
        if (energy === 0) continue;
        bound = Math.max(
          bound,
          heads[task]! + Math.ceil(energy / capacities[resource]!) + following,
        );
      }
    }
  }
  return bound;
}
