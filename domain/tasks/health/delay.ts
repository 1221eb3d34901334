import type { Shape } from '../../forecast/forecast.ts';
import { criticalPath } from '../../schedule/criticalPath.ts';
import { linkArrays } from '../../schedule/linkArrays.ts';
import { openingTasks } from '../../schedule/opening.ts';
import { workToOpening } from '../../schedule/workToOpening.ts';
import { plannedSeconds } from '../expected.ts';
import type { Work } from '../work.ts';
import type { Examined } from './examined.ts';
import type { Finding } from './finding.ts';
import { marks, sources } from './marks.ts';

/**
 * The delay test (DCMA-EA PAM 200.1, check 12) over links only: minutes by which the opening moves when the task takes
 * `delay` minutes longer, for each task that the opening waits for. A longest path that goes through a task's finish
 * grows by the whole delay, every other path by nothing, so one pass from each end tells it for all tasks at once.
 * The order of work must have no loop.
 */
export function openingMoves(work: Work, shape: Shape, delay: number): Map<string, number> {
  const toOpen = workToOpening(work);
  const goal = openingTasks(work);
  const links = linkArrays(toOpen);
  const count = links.rows.length;
  const seconds = Float64Array.from(links.rows, (row) =>
    plannedSeconds(toOpen.tasks[row]!.minutes, shape, 1),
  );
  const early = new Float64Array(count);
  for (let to = 0; to < count; to += 1) {
    for (let at = links.beforeHead[to]!; at < links.beforeHead[to + 1]!; at += 1) {
      const from = links.before[at]!;
      const length = links.beforeFromStart[at] ? 0 : seconds[from]!;
      early[to] = Math.max(early[to]!, early[from]! + length + links.beforeWait[at]!);
    }
  }
  // The longest way to the opening from the start of a task, and from its finish.
  const fromStart = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  const fromFinish = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  let end = 0;
  for (let from = count - 1; from >= 0; from -= 1) {
    if (goal.has(toOpen.tasks[links.rows[from]!]!.id)) fromFinish[from] = 0;
    for (let at = links.afterHead[from]!; at < links.afterHead[from + 1]!; at += 1) {
      const way = links.afterWait[at]! + fromStart[links.after[at]!]!;
      const side = links.afterFromStart[at] ? fromStart : fromFinish;
      side[from] = Math.max(side[from]!, way);
    }
    fromStart[from] = Math.max(fromStart[from]!, seconds[from]! + fromFinish[from]!);
    end = Math.max(end, early[from]! + fromStart[from]!);
  }
  const moves = new Map<string, number>();
  for (const [at, row] of links.rows.entries()) {
    const through = early[at]! + seconds[at]! + fromFinish[at]! + delay * 60;
    moves.set(toOpen.tasks[row]!.id, Math.max(0, through - end) / 60);
  }
  return moves;
}

/** Critical tasks that may run late without the opening moving by as much: they count by their start. */
export function delayFindings({ work, options, open, named }: Examined): Finding[] {
  const { shape } = options;
  const critical = criticalPath(workToOpening(work), shape);
  if (!critical.ok) {
    return [];
  }
  const todo = new Set(open.map(({ id }) => id));
  const moves = openingMoves(work, shape, marks.delay);
  const failed = critical.value.tasks
    .filter(({ task, totalFloat }) => totalFloat === 0 && todo.has(task))
    .map(({ task }) => ({ task, short: marks.delay - (moves.get(task) ?? 0) }))
    .filter(({ short }) => short > 0);
  return [
    ...findingOf(
      failed.filter(({ short }) => short === marks.delay),
      'mend',
    ),
    ...findingOf(
      failed.filter(({ short }) => short < marks.delay),
      'look',
    ),
  ];

  function findingOf(
    some: readonly { readonly task: string; readonly short: number }[],
    weight: 'mend' | 'look',
  ): Finding[] {
    if (some.length === 0) return [];
    const tasks = some.map(({ task }) => task);
    const sentence =
      weight === 'mend'
        ? `${named(tasks)}: the opening waits for its start alone; however long it takes, the opening does not move. Say what waits for its finish.`
        : `${named(tasks)}: the opening waits for its start more than for its finish, so it may run ${spare(some)} late before the opening moves. Leave it so where the next is meant to begin while it runs; else let the next wait for its finish.`;
    return [{ kind: 'delay-test', weight, tasks, sentence, source: sources.delay }];
  }
}

function spare(some: readonly { readonly short: number }[]): string {
  const minutes = some.map(({ short }) => Math.round(short * 10) / 10);
  const [least, most] = [Math.min(...minutes), Math.max(...minutes)];
  return least === most ? `${least} min` : `${least} to ${most} min`;
}
