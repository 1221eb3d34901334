import { finishAt, pacesOf, startAt } from '#domain/schedule/pace.ts';
import type { Past } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { plannedSeconds } from '#domain/tasks/expected.ts';
import type { Work } from '#domain/tasks/work.ts';

type Times = { readonly start: number; readonly finish: number };

/**
 * Earliest starts over links, hand-overs and releases of a plan when each task takes its planned minutes times
 * `factor(row)`, with rests and light as they come. What the past has begun keeps its start. Throws when links and hand-overs go round in a circle.
 */
export function replay(
  work: Work,
  plan: Plan,
  factor: (row: number) => number,
  past?: Past,
): Map<string, Times> {
  const begun = new Set(
    (past?.tasks ?? []).filter(({ status }) => status !== 'stopped').map(({ task }) => task),
  );
  const done = new Set(
    (past?.tasks ?? []).filter(({ status }) => status === 'done').map(({ task }) => task),
  );
  const arcs = [
    ...work.links,
    ...plan.handOvers.map(({ from, to, wait = 0 }) => ({
      from,
      to,
      counts: 'finish' as const,
      wait,
    })),
  ];
  const paceOf = pacesOf(work);
  const left = new Map(
    (past?.tasks ?? [])
      .filter(({ status }) => status === 'stopped')
      .map(({ task, part = 0 }) => [task, 1 - part]),
  );
  const rows = new Map(work.tasks.map(({ id }, row) => [id, row]));
  const times = new Map<string, Times>();
  let open = [...plan.tasks];
  while (open.length > 0) {
    const later: typeof open = [];
    for (const own of open) {
      const before = begun.has(own.task) ? [] : arcs.filter(({ to }) => to === own.task);
      if (!before.every(({ from }) => times.has(from))) {
        later.push(own);
        continue;
      }
      const bounds = before.map(({ from, counts, wait }) => {
        const { start, finish } = times.get(from)!;
        return (counts === 'start' ? start : finish) + Math.round(wait * 60) / 60;
      });
      const task = work.tasks[rows.get(own.task)!]!;
      const atWork = own.crews.filter(({ people }) => people > 0).map(({ crew }) => crew);
      const pace = begun.has(own.task) || own.finish === own.start ? null : paceOf(task, atWork);
      if (pace) {
        const share = own.stretch * (left.get(own.task) ?? 1);
        const whole = plannedSeconds(task.minutes, plan.shape, share);
        const seconds = whole * factor(rows.get(own.task)!);
        const from = startAt(pace, Math.max(own.release, ...bounds) * 60, seconds);
        times.set(own.task, { start: from / 60, finish: finishAt(pace, from, seconds) / 60 });
        continue;
      }
      const start = begun.has(own.task) ? own.start : Math.max(own.release, ...bounds);
      const minutes =
        (own.finish - own.start) * (done.has(own.task) ? 1 : factor(rows.get(own.task)!));
      times.set(own.task, { start, finish: start + minutes });
    }
    if (later.length === open.length) throw new Error('Links and hand-overs go round in a circle.');
    open = later;
  }
  return times;
}
