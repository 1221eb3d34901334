import type { Compiled } from '../compile.ts';
import { sameWay } from '../schedule.ts';
import { type Individual, remember } from './individual.ts';
import type { Placer } from './placer.ts';
import { waitingIn } from './waiting.ts';

/** So much more idle time, in person-seconds, is the rounding of tasks to whole seconds. */
const rounding = 60;

/** Schedules made to give tasks their usual people back: a share of all, and at most so many. */
const share = 0.1;
const most = 300;

/** How many tries a search of so many schedules can spare; none where there are only the usual people. */
export function usualTries({ otherPeople }: Compiled, effort: number): number {
  return otherPeople === 0 ? 0 : Math.floor(Math.min(most, share * effort));
}

/**
 * Gives tasks their usual people back wherever that costs nothing: the opening comes no later, nobody waits longer and
 * no more crews change. Tries all tasks at once, then halves of those with whom it did not go.
 */
export function usualAgain(
  placer: Placer,
  best: Individual,
  tries: number,
  mayGoOn: () => boolean,
): Individual {
  const { compiled, only, now, pinned } = placer;
  const { idle, changes } = waitingIn(compiled, only, best);
  let kept = best;
  const unusual = Array.from({ length: compiled.count }, (_, task) => task)
    .filter((task) => only[task] === 1 && best.way[task]! >= compiled.usualEnd[task]!)
    .sort((one, other) => best.start[one]! - best.start[other]!);
  const groups = unusual.length > 0 ? [unusual] : [];
  pinned.fill(sameWay);
  for (let turn = 0; turn < tries && groups.length > 0 && mayGoOn(); turn += 1) {
    const group = groups.shift()!;
    now.way.set(kept.way);
    for (const task of group) {
      now.way[task] = usualWay(compiled, task, kept.way[task]!);
    }
    const opening = placer.forward(kept.start);
    const waiting = opening <= kept.opening ? waitingIn(compiled, only, now) : null;
    if (waiting && waiting.idle <= idle + rounding && waiting.changes <= changes) {
      kept = remember(now, opening);
    } else if (group.length > 1) {
      const half = Math.ceil(group.length / 2);
      groups.push(group.slice(0, half), group.slice(half));
    }
  }
  return kept;
}

/** The way with the usual people of the same crews; the same way where there is none. */
function usualWay(compiled: Compiled, task: number, w: number): number {
  const crews = crewsOf(compiled, w);
  for (let usual = compiled.wayHead[task]!; usual < compiled.usualEnd[task]!; usual += 1) {
    if (crewsOf(compiled, usual) === crews) {
      return usual;
    }
  }
  return w;
}

function crewsOf({ useHead, useOf, crewCount }: Compiled, w: number): string {
  return useOf
    .subarray(useHead[w]!, useHead[w + 1]!)
    .filter((of) => of < crewCount)
    .join();
}
