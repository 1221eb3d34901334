import { topologicalOrder } from '../tasks/graph.ts';
import type { Work } from '../tasks/work.ts';
import { openingTasks } from './opening.ts';

/** The part of an order of work that the opening waits for: the tasks that open and everything they come after. */
export function workToOpening(work: Work): Work {
  const wanted = openingTasks(work);
  const backwards = (topologicalOrder(work) ?? []).toReversed();
  const place = new Map(backwards.map((id, at) => [id, at]));
  const links = work.links.toSorted((a, b) => (place.get(a.to) ?? 0) - (place.get(b.to) ?? 0));
  for (const { from, to } of links) if (wanted.has(to)) wanted.add(from);
  return {
    ...work,
    tasks: work.tasks.filter(({ id }) => wanted.has(id)),
    links: work.links.filter(({ to }) => wanted.has(to)),
  };
}
