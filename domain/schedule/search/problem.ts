/**
 * The scheduling problem as flat typed arrays: tasks numbered so that every link leads from a lower to a higher number,
 * times in whole units, start counted from 0. Everything fast reads this and nothing else.
 */
export type Problem = {
  readonly tasks: number;
  readonly durations: Int32Array;
  /** What each task comes after. */
  readonly before: Arcs;
  /** The same arcs, seen from the earlier task. */
  readonly after: Arcs;
  readonly resources: number;
  /** Units in every moment, per resource. */
  readonly capacities: Int32Array;
  /** Units held while a task runs: task by task, `resources` numbers each. */
  readonly demands: Int32Array;
};

/** Arcs in compressed rows: those of task `t` are `first[t]` up to `first[t + 1]`. */
export type Arcs = {
  readonly first: Int32Array;
  readonly task: Int32Array;
  /** Least units from start to start; the duration of the earlier task where the later one waits for its finish. */
  readonly lag: Int32Array;
};

/** `to` starts at least `lag` after `from` starts. */
export type Link = { readonly from: number; readonly to: number; readonly lag: number };

/**
 * Builds a problem. Throws when a link does not lead to a higher number or a task asks for more than there is: callers
 * number and check first.
 */
export function buildProblem(input: {
  readonly durations: readonly number[];
  readonly links: readonly Link[];
  readonly capacities: readonly number[];
  /** One row per task. */
  readonly demands: readonly (readonly number[])[];
}): Problem {
  const { durations, links, capacities, demands } = input;
  for (const { from, to } of links) {
    if (from >= to) throw new Error(`Link ${from} -> ${to} does not lead to a higher number.`);
  }
  demands.forEach((row, task) => {
    if (row.some((units, resource) => units > capacities[resource]!)) {
      throw new Error(`Task ${task} asks for more than there is.`);
    }
  });
  return {
    tasks: durations.length,
    durations: Int32Array.from(durations),
    before: rows(
      durations.length,
      links.map(({ from, to, lag }) => [to, from, lag]),
    ),
    after: rows(
      durations.length,
      links.map(({ from, to, lag }) => [from, to, lag]),
    ),
    resources: capacities.length,
    capacities: Int32Array.from(capacities),
    demands: Int32Array.from(demands.flat()),
  };
}

function rows(tasks: number, arcs: readonly (readonly [number, number, number])[]): Arcs {
  const first = new Int32Array(tasks + 1);
  for (const [owner] of arcs) first[owner + 1]! += 1;
  for (let task = 0; task < tasks; task++) first[task + 1]! += first[task]!;
  const next = first.slice();
  const task = new Int32Array(arcs.length);
  const lag = new Int32Array(arcs.length);
  for (const [owner, other, units] of arcs) {
    const at = next[owner]!++;
    task[at] = other;
    lag[at] = units;
  }
  return { first, task, lag };
}

/** Longest path to each task's start (`heads`) and from it to the end of everything (`tails`, its own run included). */
export function headsAndTails(problem: Problem): { heads: Int32Array; tails: Int32Array } {
  const { tasks, durations, before, after } = problem;
  const heads = new Int32Array(tasks);
  const tails = durations.slice();
  for (let task = 0; task < tasks; task++) {
    for (let at = before.first[task]!; at < before.first[task + 1]!; at++) {
      heads[task] = Math.max(heads[task]!, heads[before.task[at]!]! + before.lag[at]!);
    }
  }
  for (let task = tasks - 1; task >= 0; task--) {
    for (let at = after.first[task]!; at < after.first[task + 1]!; at++) {
      tails[task] = Math.max(tails[task]!, tails[after.task[at]!]! + after.lag[at]!);
    }
  }
  return { heads, tails };
}

/** The length of the critical path: no schedule is shorter. */
export function criticalPathLength(problem: Problem): number {
  const { tails } = headsAndTails(problem);
  return tails.reduce((longest, tail) => Math.max(longest, tail), 0);
}

/**
 * The same problem with time running backwards: the arcs turn round and task `t` of one is task `tasks - 1 - t` of the
 * other, so that numbers still rise along links. A start `s` becomes `end - s - duration`.
 */
export function mirror(problem: Problem): Problem {
  const { tasks, durations, before, after, resources, demands } = problem;
  const turned = (arcs: Arcs): Arcs => {
    const out: [number, number, number][] = [];
    for (let task = 0; task < tasks; task++) {
      for (let at = arcs.first[task]!; at < arcs.first[task + 1]!; at++) {
        const other = arcs.task[at]!;
        const [early, late] = task < other ? [task, other] : [other, task];
        const lag = arcs.lag[at]! + durations[late]! - durations[early]!;
        out.push([tasks - 1 - task, tasks - 1 - other, lag]);
      }
    }
    return rows(tasks, out);
  };
  const mirrored = new Int32Array(demands.length);
  for (let task = 0; task < tasks; task++) {
    const from = (tasks - 1 - task) * resources;
    mirrored.set(demands.subarray(from, from + resources), task * resources);
  }
  return {
    ...problem,
    durations: durations.slice().reverse(),
    before: turned(after),
    after: turned(before),
    demands: mirrored,
  };
}
