import { topologicalOrder } from '../graph.ts';
import type { Link, Work } from '../work.ts';

/**
 * The links without those that say nothing new: a task that comes after another through a third need not be linked to
 * the first as well. A kit says such things often ("every bay after the whole nose"), and a person who reads or edits
 * the order should meet each reason once. Links from a hold stay: it can lapse, and then guards each of its tasks
 * itself. Only plain links (finish, no wait) are dropped, and only for a way of links that wait for the finish too.
 */
export function withoutShortcuts(work: Work): Link[] {
  const holds = new Set(work.tasks.filter(({ hold }) => hold).map(({ id }) => id));
  const next = new Map<string, string[]>();
  for (const link of work.links) {
    if (link.counts === 'finish' && link.wait >= 0) {
      next.set(link.from, [...(next.get(link.from) ?? []), link.to]);
    }
  }
  const behind = new Map<string, Set<string>>();
  for (const id of (topologicalOrder(work) ?? []).reverse()) {
    const all = new Set<string>();
    for (const to of next.get(id) ?? []) {
      all.add(to);
      for (const further of behind.get(to) ?? []) {
        all.add(further);
      }
    }
    behind.set(id, all);
  }
  return work.links.filter(({ from, to, counts, wait }) => {
    const plain = counts === 'finish' && wait === 0;
    const through = (next.get(from) ?? []).some((other) => behind.get(other)?.has(to));
    return !plain || holds.has(from) || !through;
  });
}
