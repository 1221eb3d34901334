import { anyWay, sameWay, usualPeople } from '../../schedule.ts';
import type { Random } from '../../search/random.ts';
import type { Manned, MannedSides } from './mannedSides.ts';

/** Least and most of the schedule, as shares, in which tasks are freed. */
const leastSpan = 0.03;
const mostSpan = 0.4;

/** How much longer a schedule may start out than the one it comes from: justification seldom gains more. */
const hopeful = 1.03;

/**
 * Frees the tasks of a stretch of time, some more than others, to be done in another order, by other crews and with
 * other people, while the order of the rest stands; turns what comes out round and back. Goes on from whatever is no
 * longer, as long as `mayGoOn`. `report` is told of each schedule that is taken, which is none but forward ones.
 */
export function mannedFreeing(
  sides: MannedSides,
  random: Random,
  base: Manned,
  mayGoOn: () => boolean,
  report: (found: Manned) => void,
): void {
  const { tasks, firstWay, endWay } = sides.problems[0];
  const keys = new Int32Array(tasks);
  const open = new Uint8Array(tasks);
  let kept = base;
  while (mayGoOn()) {
    const span = (leastSpan + (mostSpan - leastSpan) * random.unit() ** 2) * kept.length;
    const from = random.unit() * (kept.length + span) - span;
    const shake = random.unit() ** 2 * span;
    const freed = random.unit();
    const other = random.unit();
    const stray = random.unit() ** 2;
    const ways = kept.ways.slice();
    for (let task = 0; task < tasks; task += 1) {
      const start = kept.starts[task]!;
      const isFree = start >= from && start < from + span;
      // Twice the start, so that what is shaken can fall between two that start one after the other.
      keys[task] = 2 * start + (isFree ? Math.floor(2 * shake * random.unit()) : 0);
      open[task] = sameWay;
      if (isFree && random.unit() < freed) {
        if (random.unit() < stray) {
          ways[task] = firstWay[task]! + random.below(endWay[task]! - firstWay[task]!);
        } else {
          open[task] = random.unit() < other ? anyWay : usualPeople;
        }
      }
    }
    const limit = Math.ceil(kept.length * hopeful);
    const made = sides.decode(0, keys, ways, open, limit);
    const back = made && sides.turn(made, null, limit);
    const forth = back && sides.turn(back, open, kept.length);
    const best = forth ?? (made && made.length <= kept.length ? made : null);
    if (best) {
      const shorter = best.length < kept.length;
      kept = best;
      if (shorter || random.unit() < toldEqual) {
        report(kept);
      }
    }
  }
}

/** Of those that are as long as the one they come from, the share that is told of: to place one takes long. */
const toldEqual = 0.1;
