import type { HeadsAndTails } from '../../headsAndTails.ts';

/** A stretch of the build and which tasks can have any part in it. */
export type Stretch = {
  /** Seconds; null for the middle of the build, which is as long as it needs to be. */
  readonly length: number | null;
  /** 1 by task. */
  readonly open: Uint8Array;
};

/**
 * Cuts the build into stretches after its start, in which only the tasks that links, stores and hours let begin by then
 * can run; the middle, where any can; and stretches before the opening, in which only those can run that leave no more
 * to be done after them. What comes before and after the middle takes `length` seconds each, in `parts` stretches.
 */
export function stretches(
  { head, rest }: HeadsAndTails,
  tasks: readonly number[],
  length: number,
  parts: number,
): Stretch[] {
  const begin = tasks.reduce((least, task) => Math.min(least, head[task]!), Number.MAX_VALUE);
  const all = new Uint8Array(head.length);
  for (const task of tasks) {
    all[task] = 1;
  }
  const early = cut(tasks, (task) => head[task]! - begin, length, parts, all);
  const late = cut(tasks, (task) => rest[task]!, length, parts, all);
  return [{ length: null, open: all }, ...early, ...late];
}

/** Stretches from one end: `reach` is how far from that end a task is at least. Each has about as many tasks new to it. */
function cut(
  tasks: readonly number[],
  reach: (task: number) => number,
  length: number,
  parts: number,
  all: Uint8Array,
): Stretch[] {
  const moments = tasks
    .map(reach)
    .filter((moment) => moment > 0 && moment < length)
    .sort((one, other) => one - other);
  const cuts = new Set([0]);
  for (let part = 1; part < parts && moments.length > 0; part += 1) {
    cuts.add(moments[Math.floor((part * moments.length) / parts)]!);
  }
  cuts.add(length);
  const at = [...cuts].sort((one, other) => one - other);
  return at.slice(1).map((to, part) => {
    const open = all.map((is, task) => (is === 1 && reach(task) < to ? 1 : 0));
    return { length: to - at[part]!, open };
  });
}
