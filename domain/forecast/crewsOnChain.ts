import type { Past } from '../schedule/past.ts';
import type { Work } from '../tasks/work.ts';
import type { Network } from './network.ts';
import type { Run } from './run.ts';

/** How often each crew (by its row in the work) had a task to come on the chain that set the opening. */
export type ChainCount = {
  readonly counts: Float64Array;
  /** Crews of the task at position `t`: `crews[crewsAt[t]]` up to `crewsAt[t + 1]`. */
  readonly crewsAt: Int32Array;
  readonly crews: Int32Array;
  /** The last run that counted the crew. */
  readonly counted: Int32Array;
};

/**
 * `crews` gives the ids of each task's crews by its position. Crews that the work does not know are not counted, nor what
 * is done: the chain of what is to come is the one that can still be helped.
 */
export function crewCounts(
  work: Work,
  crews: readonly (readonly string[])[],
  past?: Past,
): ChainCount {
  const rows = new Map(work.crews.map(({ id }, row) => [id, row]));
  const done = new Set(
    past?.tasks.flatMap(({ task, status }) => (status === 'done' ? [task] : [])),
  );
  const known = crews.map((ids, position) =>
    done.has(work.tasks[position]!.id)
      ? []
      : ids.flatMap((id) => {
          const row = rows.get(id);
          return row === undefined ? [] : [row];
        }),
  );
  const crewsAt = new Int32Array(known.length + 1);
  known.forEach((own, task) => {
    crewsAt[task + 1] = crewsAt[task]! + own.length;
  });
  return {
    counts: new Float64Array(work.crews.length),
    crewsAt,
    crews: Int32Array.from(known.flat()),
    counted: new Int32Array(work.crews.length).fill(-1),
  };
}

/** Adds 1 for every crew on the chain of this run. */
export function countCrews(network: Network, run: Run, chain: ChainCount, number: number): void {
  const { counts, crewsAt, crews, counted } = chain;
  let task = run.last;
  for (;;) {
    for (let k = crewsAt[task]!; k < crewsAt[task + 1]!; k++) {
      const crew = crews[k]!;
      if (counted[crew] !== number) {
        counted[crew] = number;
        counts[crew]!++;
      }
    }
    const arc = run.setBy[task]!;
    if (arc < 0) return;
    task = network.arcFrom[arc]! >> 1;
  }
}
