import type { Compiled } from '../compile.ts';
import { type Schedule, sameWay } from '../schedule.ts';
import type { Random } from '../search/random.ts';
import { changedOrders, type Order } from './changedOrders.ts';
import { type Individual, remember } from './individual.ts';
import type { Placer } from './placer.ts';
import { costOfChanges } from './stability.ts';

/** Tries to take changes back; each costs one schedule. */
const tries = 120;

/**
 * Weighs schedules against the orders that people have: of the best schedule found, the orders kept to, and what lies
 * between them, the one that opens earliest when the minutes that its changes cost are added. Changes that gain nothing
 * are taken back.
 */
export function keepOrders(
  placer: Placer,
  random: Random,
  best: Individual,
  accepted: Schedule,
  mayGoOn: () => boolean,
): Individual {
  const { compiled, only, now, pinned } = placer;
  const had = ordersOf(compiled, only, accepted);
  const weigh = (schedule: Schedule, opening: number) => {
    const changed = changedOrders(had, ordersOf(compiled, only, schedule)).tasks;
    return { changed, minutes: opening / 60 + costOfChanges(changed.size) };
  };
  let kept = best;
  let weight = weigh(best, best.opening);
  const consider = (opening: number) => {
    const found = opening < Number.POSITIVE_INFINITY ? weigh(now, opening) : null;
    const gained = found && found.minutes - weight.minutes;
    const fewer = found && found.changed.size < weight.changed.size;
    if (found && (gained! < 0 || (gained === 0 && fewer))) {
      kept = remember(now, opening);
      weight = found;
    }
  };
  pinned.fill(sameWay);
  now.way.set(accepted.way);
  consider(placer.forward(accepted.start));
  const key = new Float64Array(compiled.count);
  for (let turn = 0; turn < tries && weight.changed.size > 0 && mayGoOn(); turn += 1) {
    const share = random.unit();
    now.way.set(kept.way);
    key.set(kept.start);
    for (const task of weight.changed) {
      if (random.unit() < share) {
        key[Number(task)] = accepted.start[Number(task)]!;
        now.way[Number(task)] = accepted.way[Number(task)]!;
      }
    }
    consider(placer.forward(key));
  }
  return kept;
}

function ordersOf(compiled: Compiled, only: Uint8Array, { start, way }: Schedule): Order[] {
  const { count, crewCount, useHead, useOf, useAmount } = compiled;
  const orders: Order[] = [];
  for (let task = 0; task < count; task += 1) {
    const w = way[task]!;
    for (let use = useHead[w]!; only[task] === 1 && use < useHead[w + 1]!; use += 1) {
      if (useOf[use]! < crewCount) {
        const crew = String(useOf[use]);
        orders.push({ task: String(task), crew, people: useAmount[use]!, start: start[task]! });
      }
    }
  }
  return orders;
}
