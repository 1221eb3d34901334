import type { Plan } from '#domain/schedule/plan.ts';
import { expectedMinutes } from '#domain/tasks/expected.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

export type Played = { readonly task: Task; readonly start: number; readonly finish: number };

/** How a task of the story went against its expected minutes: a little over and under, the same every time. */
function luck(task: Task): number {
  const spread = [0.94, 1.06, 1, 1.12, 0.9, 1.02, 0.97, 1.08];
  return spread[(task.number * 5) % spread.length]!;
}

/**
 * When each task of the story starts and finishes, in minutes after the start: the earliest over links and
 * hand-overs with the minutes that fate gave it. A task behind a load in `missing` never starts.
 */
export function playTimes(work: Work, plan: Plan, missing: ReadonlySet<string>): Played[] {
  const tasks = new Map(work.tasks.map((task) => [task.id, task]));
  const played = new Map<string, Played>();
  for (const planned of plan.tasks) {
    const task = tasks.get(planned.task)!;
    let start = task.loads.some((load) => missing.has(load))
      ? Number.POSITIVE_INFINITY
      : planned.release;
    for (const link of work.links.filter(({ to }) => to === task.id)) {
      const from = played.get(link.from)!;
      start = Math.max(start, (link.counts === 'start' ? from.start : from.finish) + link.wait);
    }
    for (const arc of plan.handOvers.filter(({ to }) => to === task.id))
      start = Math.max(start, played.get(arc.from)!.finish + (arc.wait ?? 0));
    const minutes = expectedMinutes(task.minutes, plan.shape) * planned.stretch * luck(task);
    played.set(task.id, { task, start, finish: start + minutes });
  }
  return [...played.values()].filter(({ start }) => Number.isFinite(start));
}
