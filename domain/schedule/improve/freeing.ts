import { anyWay, sameWay, usualPeople } from '../schedule.ts';
import type { Random } from '../search/random.ts';
import { type Individual, remember } from './individual.ts';
import type { Placer } from './placer.ts';

/** Least and most of the build, as shares, in which tasks are freed. */
const leastSpan = 0.03;
const mostSpan = 0.4;

/**
 * Frees the tasks of a stretch of time, some more than others, to be done in another order, by other crews and with
 * other people, while the rest stands; pushes what comes out to its end and back. Goes on from whatever opens no later,
 * until so many stretches in a row have gained nothing. `note` is told of each schedule as it stands in the placer.
 */
export function freeing(
  placer: Placer,
  random: Random,
  base: Individual,
  patience: number,
  note: (opening: number) => void,
  isOver: () => boolean,
): void {
  const { compiled, only, now, pinned } = placer;
  const key = new Float64Array(compiled.count);
  let kept = base;
  for (let idle = 0; idle < patience && !isOver(); idle += 1) {
    const span = (leastSpan + (mostSpan - leastSpan) * random.unit() ** 2) * kept.opening;
    const from = random.unit() * (kept.opening + span) - span;
    const shake = random.unit() ** 2 * span;
    const freed = random.unit();
    const other = random.unit();
    const stray = random.unit() ** 2;
    now.way.set(kept.way);
    for (let task = 0; task < compiled.count; task += 1) {
      const start = kept.start[task]!;
      const isFree = only[task] === 1 && start >= from && start < from + span;
      key[task] = start + (isFree ? shake * random.unit() : 0);
      pinned[task] = sameWay;
      if (isFree && random.unit() < freed) {
        const first = compiled.wayHead[task]!;
        if (random.unit() < stray) {
          now.way[task] = first + random.below(compiled.wayHead[task + 1]! - first);
        } else {
          pinned[task] = random.unit() < other ? anyWay : usualPeople;
        }
      }
    }
    let opening = placer.forward(key);
    note(opening);
    if (opening === Number.POSITIVE_INFINITY || isOver()) {
      continue;
    }
    const first = opening <= kept.opening ? remember(now, opening) : null;
    placer.pushToEnd(opening);
    opening = placer.forward(now.start);
    note(opening);
    const made = first !== null && first.opening < opening ? first : remember(now, opening);
    if (made.opening <= kept.opening) {
      idle = made.opening < kept.opening ? 0 : idle;
      kept = made;
    }
  }
}
