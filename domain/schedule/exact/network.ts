import { headsAndTails, type Problem } from '../search/problem.ts';

/**
 * The problem as bounds on starts that push each other. Task `t` has two bounds: `2t`, its earliest start, and `2t + 1`,
 * its latest start with the sign turned, so that both only rise. One more task, the sink, starts when all have finished.
 * Arcs of bound `b` stand at `first[b]` up to `first[b + 1]`: bound `to` is at least that of `b` plus `lag`.
 */
export type Network = {
  readonly sink: number;
  /** Per task, the sink's 0 included. */
  readonly durations: Int32Array;
  readonly first: Int32Array;
  readonly to: Int32Array;
  readonly lag: Int32Array;
  /** Where the bounds stand when everything must finish by the deadline given. */
  readonly bounds: Int32Array;
};

/** Lays the arcs out in both directions and the bounds for schedules no longer than `deadline`. */
export function network(problem: Problem, deadline: number): Network {
  const sink = problem.tasks;
  const durations = new Int32Array(sink + 1);
  durations.set(problem.durations);
  const rows: number[][] = Array.from({ length: 2 * (sink + 1) }, () => []);
  const arc = (from: number, to: number, lag: number) => {
    rows[2 * from]!.push(2 * to, lag);
    rows[2 * to + 1]!.push(2 * from + 1, lag);
  };
  const { after } = problem;
  for (let task = 0; task < sink; task++) {
    let closed = false;
    for (let at = after.first[task]!; at < after.first[task + 1]!; at++) {
      arc(task, after.task[at]!, after.lag[at]!);
      if (after.lag[at]! >= durations[task]!) closed = true;
    }
    if (!closed) arc(task, sink, durations[task]!);
  }
  const first = new Int32Array(rows.length + 1);
  rows.forEach((row, bound) => {
    first[bound + 1] = first[bound]! + row.length / 2;
  });
  const flat = rows.flat();
  const { heads, tails } = headsAndTails(problem);
  const bounds = new Int32Array(2 * (sink + 1));
  for (let task = 0; task < sink; task++) {
    bounds[2 * task] = heads[task]!;
    bounds[2 * task + 1] = tails[task]! - deadline;
  }
  bounds[2 * sink] = tails.reduce((longest, tail) => Math.max(longest, tail), 0);
  bounds[2 * sink + 1] = -deadline;
  return {
    sink,
    durations,
    first,
    to: Int32Array.from(flat.filter((_, at) => at % 2 === 0)),
    lag: Int32Array.from(flat.filter((_, at) => at % 2 === 1)),
    bounds,
  };
}
