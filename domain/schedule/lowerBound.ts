import type { Compiled } from './compile.ts';
import { type HeadsAndTails, headsAndTails } from './headsAndTails.ts';

/** Heads and tails tried as limits of an energy bound; more would cost more than they tell. */
const mostLimits = 120;

/**
 * Seconds before which no plan can open: the longest path over links, and for every crew and zone the people-seconds
 * that must be spent between some head and some tail, divided by what there is of it. All to the whole second.
 */
export function lowerBound(compiled: Compiled): number {
  const times = headsAndTails(compiled);
  let bound = compiled.settledOpening;
  for (let task = 0; task < compiled.count; task += 1) {
    bound = Math.max(bound, times.head[task]! + times.tail[task]!);
  }
  for (const [of, demands] of demandsOf(compiled, times).entries()) {
    bound = Math.max(bound, energyBound(demands, compiled.capacity[of]!));
  }
  return bound;
}

type Demand = { readonly head: number; readonly rest: number; readonly energy: number };

/** By resource: what every task that leads to the opening spends on it, in whichever way it is done. */
function demandsOf(compiled: Compiled, times: HeadsAndTails): Demand[][] {
  const demands: Demand[][] = Array.from(compiled.capacity, () => []);
  for (let task = 0; task < compiled.count; task += 1) {
    const rest = times.rest[task]!;
    // What only has to be started, or may run on past the opening, need not have been done by then.
    if (rest < 0) {
      continue;
    }
    const first = compiled.wayHead[task]!;
    for (let use = compiled.useHead[first]!; use < compiled.useHead[first + 1]!; use += 1) {
      const of = compiled.useOf[use]!;
      const energy = leastEnergy(compiled, task, of);
      demands[of]!.push({ head: times.head[task]!, rest, energy });
    }
  }
  return demands;
}

/** The work of one resource by all tasks that start after some head and leave at least some rest behind them. */
function energyBound(demands: readonly Demand[], capacity: number): number {
  const rests = limits(demands.map(({ rest }) => rest));
  const heads = new Set(limits(demands.map(({ head }) => head)));
  const late = [...demands].sort((one, other) => other.head - one.head);
  let bound = 0;
  for (const rest of rests) {
    let energy = 0;
    for (const [at, demand] of late.entries()) {
      energy += demand.rest >= rest ? demand.energy : 0;
      const complete = late[at + 1]?.head !== demand.head;
      if (complete && energy > 0 && heads.has(demand.head)) {
        bound = Math.max(bound, demand.head + Math.ceil(energy / capacity) + rest);
      }
    }
  }
  return bound;
}

/** People-seconds that the task spends on the resource in whichever way it is done; 0 when it can do without. */
function leastEnergy(compiled: Compiled, task: number, of: number): number {
  const { wayHead, useHead, useOf, useAmount, seconds } = compiled;
  let least = Number.POSITIVE_INFINITY;
  for (let w = wayHead[task]!; w < wayHead[task + 1]!; w += 1) {
    let energy = 0;
    for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
      if (useOf[use] === of) {
        energy += useAmount[use]! * seconds[w]!;
      }
    }
    least = Math.min(least, energy);
  }
  return least;
}

function limits(values: readonly number[]): number[] {
  const distinct = [...new Set(values)].sort((one, other) => one - other);
  const step = Math.max(1, Math.ceil(distinct.length / mostLimits));
  return distinct.filter((_, at) => at % step === 0);
}
