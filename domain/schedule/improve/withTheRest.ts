import { anyWay, type Schedule, usualPeople } from '../schedule.ts';
import type { Placer } from './placer.ts';

/** The best schedule with all tasks that were not placed laid around it, in the order of some rule; null when they find no time. */
export function withTheRest(
  placer: Placer,
  best: Schedule,
  rules: readonly Float64Array[],
): Schedule | null {
  const rest = placer.only.map((first) => 1 - first);
  for (const people of [usualPeople, anyWay]) {
    placer.pinned.fill(people);
    for (const key of rules) {
      placer.now.start.set(best.start);
      placer.now.way.set(best.way);
      if (placer.addRest(rest, key)) {
        return placer.now;
      }
    }
  }
  return null;
}
