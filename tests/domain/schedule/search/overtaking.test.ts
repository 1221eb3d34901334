import fc from 'fast-check';
import { expect, it } from 'vitest';
import { buildProblem, type Problem } from '#domain/schedule/search/problem.ts';
import { search } from '#domain/schedule/search/search.ts';

/** Tasks of which some may start, or finish, before what they come after. */
const overtaking = (most: number) =>
  fc
    .tuple(
      fc.array(fc.tuple(fc.nat(6), fc.nat(2)), { minLength: 2, maxLength: most }),
      fc.array(fc.tuple(fc.nat(most - 1), fc.nat(most - 1), fc.integer({ min: -6, max: 6 }))),
    )
    .map(([tasks, links]) =>
      buildProblem({
        durations: tasks.map(([duration]) => duration),
        links: links
          .filter(([from, to]) => from < to && to < tasks.length)
          .map(([from, to, lag]) => ({ from, to, lag })),
        capacities: [2],
        demands: tasks.map(([, units]) => [units]),
      }),
    );

function keepsTo(problem: Problem, starts: ArrayLike<number>): boolean {
  const { tasks, durations, before, demands, capacities } = problem;
  for (let task = 0; task < tasks; task += 1) {
    for (let arc = before.first[task]!; arc < before.first[task + 1]!; arc += 1) {
      if (starts[task]! < starts[before.task[arc]!]! + before.lag[arc]!) return false;
    }
    // Use is highest at some start.
    let used = 0;
    for (let other = 0; other < tasks; other += 1) {
      const [from, to] = [starts[other]!, starts[other]! + durations[other]!];
      used += from <= starts[task]! && starts[task]! < to ? demands[other]! : 0;
    }
    if (used > capacities[0]!) return false;
  }
  return true;
}

/** The shortest schedule that keeps to the problem, by trying all starts. */
function shortestOfAll(problem: Problem, most: number): number {
  const starts = new Array<number>(problem.tasks).fill(0);
  const ends = () => Math.max(...starts.map((start, task) => start + problem.durations[task]!));
  let best = Number.POSITIVE_INFINITY;
  for (;;) {
    if (ends() < best && keepsTo(problem, starts)) best = ends();
    const at = starts.findLastIndex((start) => start < most);
    if (at < 0) return best;
    starts[at]! += 1;
    starts.fill(0, at + 1);
  }
}

it('A task that may start before what it comes after never breaks a link', () => {
  fc.assert(
    fc.property(overtaking(12), fc.integer(), (problem, seed) => {
      const found = search(problem, { seed, schedules: 60 });
      expect(keepsTo(problem, found.starts)).toBe(true);
      expect(found.lower).toBeLessThanOrEqual(found.length);
    }),
    { numRuns: 1000 },
  );
});

it('Where tasks may overtake what they come after it proves what trying all starts finds', () => {
  fc.assert(
    fc.property(overtaking(4), fc.integer(), (problem, seed) => {
      const { length, lower } = search(problem, { seed });
      expect(lower).toBe(length);
      expect(length).toBe(shortestOfAll(problem, length));
    }),
    { numRuns: 150 },
  );
});
