import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { normalQuantile } from '#domain/forecast/normalQuantile.ts';
import { pertQuantile } from '#domain/forecast/pert.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Minutes } from '#domain/tasks/task.ts';
import type { Work } from '#domain/tasks/work.ts';

/** How the world that the forecasts meet differs from what they believe. */
export type World = 'as believed' | 'independent tasks' | 'heavier tail' | 'one crew 1.4 slower';

/** A build as it went. Minutes after its start. */
export type Truth = {
  readonly times: ReadonlyMap<string, { readonly start: number; readonly finish: number }>;
  /** From when to when holds were done again. */
  readonly redone: readonly { readonly from: number; readonly to: number }[];
  readonly arrivals: ReadonlyMap<string, number>;
  readonly opening: number;
};

type Spell = { readonly from: number; readonly to: number };

/**
 * Plays one build. Written apart from the forecast and shares with it the quantile functions alone: draws by inversion,
 * factors crew by crew, times by recursion over links, hand-overs and releases, the dark spell by spell.
 */
export function playBuild(
  work: Work,
  plan: Plan,
  doubt: Doubt,
  dark: readonly Spell[],
  world: World,
  random: RandomGenerator,
): Truth {
  const share = () => ((random.next() >>> 0) + 0.5) / 2 ** 32;
  const normal = () => normalQuantile(share());
  const tasks = new Map(work.tasks.map((task) => [task.id, task]));
  const planned = new Map(plan.tasks.map((task) => [task.task, task]));
  const believed = world !== 'independent tasks';
  const day = believed ? doubt.day.sigma * normal() : 0;
  const crews = new Map(
    work.crews.map(({ id }) => [id, believed ? doubt.crews.sigma * normal() : 0]),
  );
  if (world === 'one crew 1.4 slower') {
    const busy = ['left', 'right', 'bracing', 'rollers', 'stores', 'far'];
    const slow = busy[Math.floor(share() * busy.length)]!;
    crews.set(slow, crews.get(slow)! + Math.log(1.4));
  }
  const alone = Math.hypot(doubt.day.sigma, doubt.crews.sigma);

  const factorOf = (id: string): number => {
    if (!believed) return Math.exp(alone * normal());
    const own = planned.get(id)!.crews.filter(({ people }) => people > 0);
    const sum = own.reduce((total, { crew }) => total + crews.get(crew)!, 0);
    return Math.exp(day + (own.length > 0 ? sum / own.length : 0));
  };
  const drawn = (minutes: Minutes) => pertQuantile(minutes, share());
  const minutesOf = (id: string): number => {
    const tail = world === 'heavier tail' && share() < 0.1 ? 2 : 1;
    return drawn(tasks.get(id)!.minutes) * planned.get(id)!.stretch * factorOf(id) * tail;
  };

  const minutes = new Map(work.tasks.map(({ id }) => [id, minutesOf(id)]));
  const again = new Map<string, number>();
  const arrivals = new Map(work.loads.map(({ id, arrives }) => [id, arrives]));
  for (const event of doubt.events) {
    if (event.kind === 'late-load') {
      for (const load of event.loads) {
        const late = share() < event.chance ? drawn(event.delay) : 0;
        arrivals.set(load, arrivals.get(load)! + late);
      }
      continue;
    }
    for (const task of event.tasks) {
      if (event.kind === 'jam') {
        const held = share() < event.chance ? drawn(event.delay) : 0;
        minutes.set(task, minutes.get(task)! + held);
      } else {
        const luck = share();
        const times = luck < event.chance ** 2 ? 2 : luck < event.chance ? 1 : 0;
        const round = chainOf(work, tasks.get(task)!.hold!.redo, minutesOf) + minutes.get(task)!;
        again.set(task, times * round);
      }
    }
  }

  const times = new Map<string, { start: number; finish: number }>();
  const redone: { from: number; to: number }[] = [];
  const timesOf = (id: string): { start: number; finish: number } => {
    const known = times.get(id);
    if (known) return known;
    let start = planned.get(id)!.release;
    for (const load of tasks.get(id)!.loads) start = Math.max(start, arrivals.get(load)!);
    for (const { from, to, counts, wait } of work.links) {
      if (to === id) start = Math.max(start, timesOf(from)[counts] + wait);
    }
    for (const { from, to } of plan.handOvers) {
      if (to === id) start = Math.max(start, timesOf(from).finish);
    }
    const first = inTheDark(start, minutes.get(id)!, dark, doubt.light.factor);
    const finish = inTheDark(first, again.get(id) ?? 0, dark, doubt.light.factor);
    if (finish > first) redone.push({ from: first, to: finish });
    const found = { start, finish };
    times.set(id, found);
    return found;
  };
  for (const { id } of work.tasks) timesOf(id);
  return { times, redone, arrivals, opening: times.get(plan.opening)!.finish };
}

/** Longest chain through a redo list, along the links that its tasks have among each other. */
function chainOf(work: Work, ids: readonly string[], minutesOf: (id: string) => number): number {
  const minutes = new Map(ids.map((id) => [id, minutesOf(id)]));
  const until = (id: string): number => {
    const before = work.links.filter(({ from, to }) => to === id && minutes.has(from));
    return Math.max(0, ...before.map(({ from }) => until(from))) + minutes.get(id)!;
  };
  return Math.max(0, ...ids.map(until));
}

/** When work of so many minutes by day is done that begins then, `factor` times as long in each dark spell. */
function inTheDark(begin: number, minutes: number, dark: readonly Spell[], factor: number): number {
  let time = begin;
  let left = minutes;
  for (const { from, to } of dark) {
    if (to <= time) continue;
    const byDay = Math.max(0, from - time);
    if (left <= byDay) break;
    left -= byDay;
    time += byDay;
    const byNight = (to - time) / factor;
    if (left <= byNight) return time + left * factor;
    left -= byNight;
    time = to;
  }
  return time + left;
}
