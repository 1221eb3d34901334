import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import { changesOf, there } from './checkLimits.ts';

/** People of a crew at a task, or not there, and on which bank; null where on both or none. */
type Stay = {
  readonly start: number;
  readonly finish: number;
  readonly people: number;
  readonly bank: string | null;
};

/**
 * Checks that each crew has people enough for all its tasks when those who change banks take their time to cross: by
 * the fewest people with whom it can be done (Dilworth's theorem, Annals of Mathematics 51(1), 1950: all stays less
 * the most that can follow one on another, a greatest flow). Written apart from the planner.
 */
export function checkCrossing(work: Work, plan: Plan, now = 0): string[] {
  const crossing = Math.round((work.crossing ?? 0) * 60) / 60;
  if (crossing === 0) return [];
  return work.crews.flatMap(({ id }) => {
    const times = [Number.NEGATIVE_INFINITY, ...new Set(changesOf(work))].sort((a, b) => a - b);
    const most = Math.max(...times.map((time) => there(work, id, time)));
    const away = times.map((start, at): Stay => {
      const finish = times[at + 1] ?? Number.POSITIVE_INFINITY;
      return { start, finish, people: most - there(work, id, start), bank: null };
    });
    const atWork = plan.tasks.map(({ task, start, finish, crews }): Stay => {
      const people = crews.find(({ crew }) => crew === id)?.people ?? 0;
      return { start, finish, people, bank: bankOf(work, task) };
    });
    const stays = [...away, ...atWork].filter(
      ({ start, finish, people }) => people > 0 && finish > start && finish > now,
    );
    const fewest = stays.reduce((sum, { people }) => sum + people, 0) - followOn(stays, crossing);
    return fewest > most ? [`${id} has ${most} and takes ${fewest} with those who cross`] : [];
  });
}

export function bankOf(work: Work, id: string): string | null {
  const zones = work.tasks.find((task) => task.id === id)?.zones ?? [];
  const banks = work.zones.filter((zone) => zones.includes(zone.id)).map(({ bank }) => bank);
  if (banks.includes('near') === banks.includes('far')) return null;
  return banks.includes('near') ? 'near' : 'far';
}

/** The most people who can go from one stay to another, by augmenting paths. */
function followOn(stays: readonly Stay[], crossing: number): number {
  const open = stays.map(({ people }) => people);
  const taken = stays.map(() => stays.map(() => 0));
  const wanted = stays.map(({ people }) => people);
  const may = (one: Stay, other: Stay) => {
    const crosses = one.bank && other.bank && one.bank !== other.bank;
    return one.finish + (crosses ? crossing : 0) <= other.start + 1e-6;
  };
  const after = stays.map((one) => stays.flatMap((other, at) => (may(one, other) ? [at] : [])));
  let flow = 0;
  const push = (from: number, seen: Set<number>): boolean => {
    for (const to of after[from]!) {
      if (seen.has(to)) continue;
      seen.add(to);
      if (wanted[to]! > 0) wanted[to]! -= 1;
      else {
        const back = stays.findIndex((_, at) => taken[at]![to]! > 0 && push(at, seen));
        if (back === -1) continue;
        taken[back]![to]! -= 1;
      }
      taken[from]![to]! += 1;
      return true;
    }
    return false;
  };
  for (const from of stays.keys()) {
    while (open[from]! > 0 && push(from, new Set())) {
      open[from]! -= 1;
      flow += 1;
    }
  }
  return flow;
}
