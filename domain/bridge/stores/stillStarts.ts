import type { Work } from '../../tasks/work.ts';

/**
 * The tasks that can be done without those loads: they use nothing from them and come after nothing that does. A
 * wrong or late truck stops the others.
 */
export function stillStarts(work: Work, missing: ReadonlySet<string>): string[] {
  const next = new Map<string, string[]>();
  for (const { from, to } of work.links) {
    next.set(from, [...(next.get(from) ?? []), to]);
  }
  const stopped = new Set<string>();
  const waiting = work.tasks
    .filter(({ loads }) => loads.some((load) => missing.has(load)))
    .map(({ id }) => id);
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (!stopped.has(id)) {
      stopped.add(id);
      waiting.push(...(next.get(id) ?? []));
    }
  }
  return work.tasks.filter(({ id }) => !stopped.has(id)).map(({ id }) => id);
}
