import type { Compiled } from './compile.ts';

/** Sets of crews of which the work together is looked at. */
const mostGroups = 24;

/** Every resource by itself, and the crews that any task can choose from together. */
export function resourceGroups(compiled: Compiled): ReadonlySet<number>[] {
  const { count, wayHead, useHead, useOf, crewCount, capacity } = compiled;
  const groups = new Map<string, Set<number>>();
  for (let task = 0; task < count && groups.size < mostGroups; task += 1) {
    const group = new Set<number>();
    for (let use = useHead[wayHead[task]!]!; use < useHead[wayHead[task + 1]!]!; use += 1) {
      if (useOf[use]! < crewCount) {
        group.add(useOf[use]!);
      }
    }
    if (group.size > 1) {
      groups.set([...group].sort().join(), group);
    }
  }
  return [...Array.from(capacity, (_, of) => new Set([of])), ...groups.values()];
}
