import { sameWay } from '../schedule.ts';
import type { Random } from '../search/random.ts';
import { type Individual, remember } from './individual.ts';
import type { Placer } from './placer.ts';

const mostChanges = 5;

/** The same order with a few tasks done in other ways; null where that finds no time. `note` is told when it opens. */
export function otherWays(
  placer: Placer,
  random: Random,
  base: Individual,
  note: (opening: number) => void,
): Individual | null {
  const { compiled, now, pinned } = placer;
  const { wayHead, count } = compiled;
  now.way.set(base.way);
  for (let changes = 1 + random.below(mostChanges); changes > 0; changes -= 1) {
    const task = random.below(count);
    const ways = wayHead[task + 1]! - wayHead[task]!;
    now.way[task] = wayHead[task]! + random.below(ways);
  }
  pinned.fill(sameWay);
  const opening = placer.forward(base.start);
  note(opening);
  return opening === Number.POSITIVE_INFINITY ? null : remember(now, opening);
}
