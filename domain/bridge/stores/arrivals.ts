import type { Plan } from '../../schedule/plan.ts';
import { topologicalOrder } from '../../tasks/graph.ts';
import type { Link, Work } from '../../tasks/work.ts';

/** When a load has to be there. Minutes after the start of the build. */
export type Arrival = {
  readonly load: string;
  readonly planned: number;
  /** Planned start of the first task that uses it; null where none does. */
  readonly needed: number | null;
  /** Later than this it makes the opening later, by this plan; null where no task that leads to the opening uses it. */
  readonly latest: number | null;
};

/** The latest arrival of each load by a plan: links and hand-overs as planned, each task as long as planned. */
export function latestArrivals(work: Work, plan: Plan): Arrival[] {
  const latest = latestStarts(work, plan);
  const starts = new Map(plan.tasks.map(({ task, start }) => [task, start]));
  return work.loads.map(({ id, arrives }) => {
    const users = work.tasks.filter(({ loads }) => loads.includes(id)).map((task) => task.id);
    const needed = users.map((task) => starts.get(task) ?? Number.POSITIVE_INFINITY);
    const bounds = users.flatMap((task) => latest.get(task) ?? []);
    return {
      load: id,
      planned: arrives,
      needed: needed.length > 0 ? Math.min(...needed) : null,
      latest: bounds.length > 0 ? Math.min(...bounds) : null,
    };
  });
}

/** Minutes to the opening when a load comes at `arrives` instead, with the plan's crews, order and hand-overs. */
export function openingIfLate(work: Work, plan: Plan, load: string, arrives: number): number {
  const uses = new Set(work.tasks.filter(({ loads }) => loads.includes(load)).map(({ id }) => id));
  const { arcs, order } = network(work, plan);
  const into = by(arcs, 'to');
  const lengths = lengthsOf(plan);
  const releases = new Map(plan.tasks.map(({ task, release }) => [task, release]));
  const starts = new Map<string, number>();
  for (const task of order) {
    const ready = (into.get(task) ?? []).map(
      ({ from, counts, wait }) =>
        (starts.get(from) ?? 0) + (counts === 'finish' ? (lengths.get(from) ?? 0) : 0) + wait,
    );
    const stores = uses.has(task) ? arrives : 0;
    starts.set(task, Math.max(releases.get(task) ?? 0, stores, ...ready));
  }
  return (starts.get(plan.opening) ?? 0) + (lengths.get(plan.opening) ?? 0);
}

/** Latest start of each task that leads to the opening, with the opening as planned. */
function latestStarts(work: Work, plan: Plan): Map<string, number> {
  const { arcs, order } = network(work, plan);
  const out = by(arcs, 'from');
  const lengths = lengthsOf(plan);
  const opening = plan.tasks.find(({ task }) => task === plan.opening);
  const latest = new Map<string, number>();
  for (const task of order.toReversed()) {
    const length = lengths.get(task) ?? 0;
    const bounds = (out.get(task) ?? []).flatMap(({ to, counts, wait }) => {
      const after = latest.get(to);
      return after === undefined ? [] : after - wait - (counts === 'finish' ? length : 0);
    });
    const own = task === plan.opening && opening ? [opening.start] : [];
    if (own.length + bounds.length > 0) {
      latest.set(task, Math.min(...own, ...bounds));
    }
  }
  return latest;
}

/** Links and hand-overs of a plan, and its tasks in an order in which each comes after all that it waits for. */
function network(work: Work, plan: Plan): { readonly arcs: Link[]; readonly order: string[] } {
  const handOvers = plan.handOvers.map(
    ({ from, to, wait = 0 }): Link => ({ from, to, counts: 'finish', wait }),
  );
  const arcs = [...work.links, ...handOvers];
  return { arcs, order: topologicalOrder({ ...work, links: arcs }) ?? [] };
}

function by(arcs: readonly Link[], end: 'from' | 'to'): Map<string, Link[]> {
  const grouped = new Map<string, Link[]>();
  for (const arc of arcs) {
    const own = grouped.get(arc[end]);
    if (own) own.push(arc);
    else grouped.set(arc[end], [arc]);
  }
  return grouped;
}

function lengthsOf(plan: Plan): Map<string, number> {
  return new Map(plan.tasks.map(({ task, start, finish }) => [task, finish - start]));
}
