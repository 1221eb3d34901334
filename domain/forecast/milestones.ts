import type { Task } from '../tasks/task.ts';
import type { Work } from '../tasks/work.ts';
import type { Milestone } from './forecast.ts';
import type { Run } from './run.ts';
import { quantileOfSorted } from './summary.ts';

/**
 * The tasks of a build that are worth a spread of their own: every hold, the move that lands the tip, each end seated.
 * Where a table knows of none of these, the last task of each phase.
 */
export function milestonesOf({ tasks }: Work): string[] {
  const marked = tasks.filter(isMilestone);
  if (marked.length > 0) return marked.map(({ id }) => id);
  const last = new Map(tasks.map((task) => [task.phase, task.id]));
  return [...last.values()];
}

function isMilestone({ hold, effect }: Task): boolean {
  return (
    hold !== undefined || effect?.kind === 'seated' || (effect?.kind === 'move' && effect.lands)
  );
}

/** Keeps when the tasks asked about finish in each run. */
export class MilestoneTimes {
  readonly #ids: readonly string[];
  readonly #rows: Int32Array;
  readonly #times: readonly Float64Array[];

  /** Ids that the work does not know are left out. */
  constructor({ tasks }: Work, ids: readonly string[], runs: number) {
    const rows = new Map(tasks.map(({ id }, row) => [id, row]));
    this.#ids = ids.filter((id) => rows.has(id));
    this.#rows = Int32Array.from(this.#ids, (id) => rows.get(id)!);
    this.#times = this.#ids.map(() => new Float64Array(runs));
  }

  keep({ moments }: Run, number: number): void {
    for (let k = 0; k < this.#rows.length; k++) {
      this.#times[k]![number] = moments[2 * this.#rows[k]! + 1]!;
    }
  }

  spreads(runs: number): Milestone[] {
    return this.#ids.map((task, k) => {
      const sorted = this.#times[k]!.subarray(0, runs).sort();
      const [p10, p50, p80, p90] = [0.1, 0.5, 0.8, 0.9].map((p) => quantileOfSorted(sorted, p));
      return { task, p10: p10!, p50: p50!, p80: p80!, p90: p90! };
    });
  }
}
