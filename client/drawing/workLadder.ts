/** One finished task: what was planned for it and what it took, in minutes. */
export type LadderTask = {
  readonly task: string;
  readonly name: string;
  readonly planned: number;
  readonly actual: number;
};

/** A task as two lengths of one ladder's rails, in pixels from its top. */
export type Rung = LadderTask & {
  readonly plannedTop: number;
  readonly plannedHeight: number;
  readonly actualTop: number;
  readonly actualHeight: number;
};

/**
 * The tasks of one crew in the order in which they were done, each below the one before: as planned on the left rail,
 * as it went on the right. The rungs between lean as far as the crew has fallen behind or gained until then.
 */
export function layLadder(tasks: readonly LadderTask[], pixelsPerMinute: number): Rung[] {
  let planned = 0;
  let actual = 0;
  return tasks.map((task) => {
    const rung = {
      ...task,
      plannedTop: planned * pixelsPerMinute,
      plannedHeight: task.planned * pixelsPerMinute,
      actualTop: actual * pixelsPerMinute,
      actualHeight: task.actual * pixelsPerMinute,
    };
    planned += task.planned;
    actual += task.actual;
    return rung;
  });
}

/** Pixels for a minute, so that three quarters of the tasks can hold their name, within reason. */
export function ladderScale(tasks: readonly LadderTask[]): number {
  const minutes = tasks.map(({ actual }) => actual).toSorted((one, other) => one - other);
  const quarter = minutes[Math.floor(minutes.length / 4)] ?? 5;
  return Math.min(6, Math.max(2, 20 / Math.max(quarter, 1)));
}
