import { anyWay, sameWay } from '../schedule.ts';
import type { Random } from '../search/random.ts';
import { type Individual, remember } from './individual.ts';
import type { Placer } from './placer.ts';
import { type Waiting, waitingIn } from './waiting.ts';

/** How far the order is shaken, as a share of the build. */
const shake = 0.1;

/** Share of the tasks that may change their way in one try. */
const freed = 0.2;

/** Schedules made to tidy up the best one: a share of all, and at most so many. */
const tidied = 0.1;
const mostTidying = 60;

/** How many tries a search of so many schedules can spare. */
export function tidyingTries(effort: number): number {
  return Math.floor(Math.min(mostTidying, tidied * effort));
}

/**
 * Betters a schedule that opens when it does: less idle time of people, then fewer changes of crew. Tries so many orders
 * and ways next to it, as long as `mayGoOn`.
 */
export function tidy(
  placer: Placer,
  random: Random,
  best: Individual,
  tries: number,
  mayGoOn: () => boolean,
): Individual {
  const { compiled, only, now, pinned } = placer;
  const key = new Float64Array(compiled.count);
  let kept = best;
  let waiting = waitingIn(compiled, only, kept);
  for (let turn = 0; turn < tries && waiting.idle + waiting.changes > 0 && mayGoOn(); turn += 1) {
    const reach = shake * random.unit() * kept.opening;
    for (let task = 0; task < key.length; task += 1) {
      key[task] = kept.start[task]! + reach * random.unit();
      pinned[task] = random.unit() < freed ? anyWay : sameWay;
    }
    now.way.set(kept.way);
    const opening = placer.forward(key);
    const found = opening === kept.opening ? waitingIn(compiled, only, now) : waiting;
    if (isLess(found, waiting)) {
      kept = remember(now, opening);
      waiting = found;
    }
  }
  return kept;
}

function isLess(one: Waiting, other: Waiting): boolean {
  return one.idle < other.idle || (one.idle === other.idle && one.changes < other.changes);
}
