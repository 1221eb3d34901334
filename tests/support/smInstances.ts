import fc from 'fast-check';
import type { SmInstance } from './smInstance.ts';

/** Small instances as their files state them: source and sink, links only from lower to higher jobs. */
export function smInstances(mostTasks: number): fc.Arbitrary<SmInstance> {
  return fc
    .record({
      tasks: fc.array(
        fc.record({
          duration: fc.integer({ min: 0, max: 8 }),
          demands: fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 5 })),
          before: fc.array(fc.nat({ max: mostTasks - 1 }), { maxLength: 3 }),
        }),
        { minLength: 2, maxLength: mostTasks },
      ),
      capacities: fc.tuple(fc.integer({ min: 5, max: 9 }), fc.integer({ min: 5, max: 9 })),
    })
    .map(({ tasks, capacities }) => {
      const successors: number[][] = Array.from({ length: tasks.length + 2 }, () => []);
      tasks.forEach((task, at) => {
        const known = [...new Set(task.before.filter((other) => other < at))];
        if (known.length === 0) successors[0]!.push(at + 1);
        for (const other of known) successors[other + 1]!.push(at + 1);
        successors[at + 1]!.push(tasks.length + 1);
      });
      return {
        jobs: tasks.length + 2,
        durations: [0, ...tasks.map(({ duration }) => duration), 0],
        demands: [[0, 0], ...tasks.map(({ demands }) => demands), [0, 0]],
        successors,
        capacities,
      };
    });
}

/**
 * The length of a shortest schedule, by trying every order: each task in turn as early as links and units allow. One of
 * the orders gives a shortest schedule (Sprecher, Kolisch and Drexl 1995: some active schedule is optimal). For up to
 * about seven tasks.
 */
export function shortestByTrial({ jobs, durations, demands, successors, capacities }: SmInstance) {
  const before = durations.map((_, job) =>
    successors.flatMap((next, other) => (next.includes(job) ? [other] : [])),
  );
  const horizon = durations.reduce((sum, duration) => sum + duration, 0);
  const starts = new Map<number, number>([[0, 0]]);
  let shortest = horizon;
  const fits = (job: number, start: number) => {
    for (let moment = start; moment < start + durations[job]!; moment++) {
      for (const [resource, capacity] of capacities.entries()) {
        let used = demands[job]![resource]!;
        for (const [other, at] of starts) {
          if (at <= moment && moment < at + durations[other]!) used += demands[other]![resource]!;
        }
        if (used > capacity) return false;
      }
    }
    return true;
  };
  const place = (): void => {
    if (starts.size === jobs - 1) {
      const ends = [...starts].map(([job, start]) => start + durations[job]!);
      shortest = Math.min(shortest, Math.max(...ends));
      return;
    }
    for (let job = 1; job < jobs - 1; job++) {
      if (starts.has(job) || !before[job]!.every((other) => starts.has(other))) continue;
      let start = Math.max(...before[job]!.map((other) => starts.get(other)! + durations[other]!));
      while (!fits(job, start)) start += 1;
      starts.set(job, start);
      place();
      starts.delete(job);
    }
  };
  place();
  return shortest;
}
