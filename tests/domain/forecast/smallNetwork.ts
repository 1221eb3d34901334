import type { HandOver, Plan } from '#domain/schedule/plan.ts';
import type { Minutes, Task } from '#domain/tasks/task.ts';
import type { Link, Work } from '#domain/tasks/work.ts';

/** One row of a textbook table: quick, likely, slow, the finish-to-start predecessors, whether it opens. */
export type Row = {
  readonly id: string;
  readonly minutes: readonly [number, number, number];
  readonly after?: readonly string[];
  readonly opens?: boolean;
};

export function estimate([quick, likely, slow]: readonly [number, number, number]): Minutes {
  return { quick, likely, slow };
}

/** A work with no crews, zones or loads: tasks and their order alone. */
export function workOf(rows: readonly Row[], links: readonly Link[] = []): Work {
  return {
    tasks: rows.map((row, index) => taskOf(row, index + 1)),
    links: [
      ...rows.flatMap(({ id, after = [] }) =>
        after.map((from): Link => ({ from, to: id, counts: 'finish', wait: 0 })),
      ),
      ...links,
    ],
    crews: [],
    zones: [],
    loads: [],
  };
}

function taskOf({ id, minutes, opens = false }: Row, number: number): Task {
  return {
    id,
    number,
    name: `Task ${id}`,
    phase: '',
    needs: [],
    minutes: estimate(minutes),
    zones: [],
    keepOff: false,
    opens,
    cautions: [],
    tools: [],
    loads: [],
  };
}

/**
 * A plan that only says what a forecast reads: stretch, releases and hand-overs. Its opening is the task
 * that opens, else the last one. Planned times are left at zero.
 */
export function planOf(
  work: Work,
  options: {
    handOvers?: readonly { from: string; to: string }[];
    release?: Readonly<Record<string, number>>;
    stretch?: Readonly<Record<string, number>>;
  } = {},
): Plan {
  return {
    format: 'spanwright-plan',
    version: 1,
    tasks: work.tasks.map(({ id }) => ({
      task: id,
      crews: [],
      start: 0,
      finish: 0,
      release: options.release?.[id] ?? 0,
      stretch: options.stretch?.[id] ?? 1,
      reason: { kind: 'start' },
    })),
    handOvers: (options.handOvers ?? []).map(
      ({ from, to }): HandOver => ({ from, to, kind: 'crew', of: 'left', people: 6 }),
    ),
    opening: (work.tasks.find(({ opens }) => opens) ?? work.tasks.at(-1)!).id,
    minutesToOpen: 0,
    lowerBound: 0,
    shape: 'pert',
  };
}
