import type { Tick } from '#domain/forecast/learn/ticks.ts';
import type { Past, PastTask } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { expectedMinutes } from '#domain/tasks/expected.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { Truth } from './truth.ts';

/** What is known of a build at one moment of it. */
export type Snapshot = {
  readonly work: Work;
  readonly past: Past;
  readonly ticks: readonly Tick[];
  readonly toldLoads: readonly string[];
};

/**
 * The moment at which `share` of the expected minutes of all tasks is done, and what was told until then: true times,
 * late trucks from when they were due. Never while a hold is done again, which a real build would tell.
 */
export function snapshotAt(work: Work, plan: Plan, truth: Truth, share: number): Snapshot {
  const now = momentOf(work, truth, share);
  const crews = new Map(plan.tasks.map(({ task, crews }) => [task, crews]));
  const tasks = work.tasks.flatMap(({ id }): PastTask[] => {
    const { start, finish } = truth.times.get(id)!;
    const about = { task: id, start, crews: crews.get(id)! };
    if (finish <= now) return [{ ...about, status: 'done', finish }];
    return start < now ? [{ ...about, status: 'at-work' }] : [];
  });
  const holds = new Set(work.tasks.filter(({ hold }) => hold).map(({ id }) => id));
  const ticks = tasks
    .filter(({ task }) => !holds.has(task))
    .map(({ task, start, finish, crews: at }) => ({
      task,
      start,
      finish: finish ?? null,
      crews: at.filter(({ people }) => people > 0).map(({ crew }) => crew),
      stops: [],
    }));
  const due = work.loads.filter(({ arrives }) => arrives <= now).map(({ id }) => id);
  const loads = work.loads.map((load) =>
    due.includes(load.id) ? { ...load, arrives: truth.arrivals.get(load.id)! } : load,
  );
  return { work: { ...work, loads }, past: { now, tasks }, ticks, toldLoads: due };
}

function momentOf(work: Work, truth: Truth, share: number): number {
  if (share === 0) return 0;
  const done = work.tasks
    .map(({ id, minutes }) => ({
      at: truth.times.get(id)!.finish,
      minutes: expectedMinutes(minutes, 'pert'),
    }))
    .sort((one, other) => one.at - other.at);
  const wanted = share * done.reduce((sum, { minutes }) => sum + minutes, 0);
  let sum = 0;
  let at = 0;
  for (const task of done) {
    if (sum >= wanted) break;
    sum += task.minutes;
    at = task.at;
  }
  for (let moved = true; moved; ) {
    const inside = truth.redone.find(({ from, to }) => from <= at && at < to);
    moved = inside !== undefined;
    if (inside) at = inside.to;
  }
  return at;
}
