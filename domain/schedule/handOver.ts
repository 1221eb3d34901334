import type { Task } from '../tasks/task.ts';
import type { Compilation } from './compile.ts';
import { type BankSide, bankOf } from './crossing.ts';
import { Later } from './later.ts';
import { lastLoad, type Manning } from './manning.ts';
import { Ordering } from './ordering.ts';
import { startAt } from './pace.ts';
import type { HandOver, Reason } from './plan.ts';
import { finishOf, type Schedule } from './schedule.ts';
import { secondsNotBefore } from './seconds.ts';
import type { SettledPast } from './settled.ts';
import { Site } from './site.ts';
import type { Wish } from './source.ts';
import type { Way } from './ways.ts';

/** A task as it comes out of the hand-overs. Seconds. */
export type HandedTask = {
  readonly start: number;
  readonly finish: number;
  readonly release: number;
  readonly reason: Reason;
};

/** What comes out of a schedule: the tasks, by number, and the ways they have, and who passes to whom. */
export type Handed = {
  readonly tasks: HandedTask[];
  readonly way: Int32Array;
  readonly handOvers: HandOver[];
};

/**
 * A task that by a negative wait starts before what it comes after, and in between its crew changes: it should start
 * no earlier than that change. Seconds.
 */
type TooEarly = { readonly number: number; readonly from: number };

/** Every round delays a task: more would be a sign that there is no end to it. */
const mostRounds = 200;

/**
 * Turns a schedule into hand-overs: goes through it in order of start and gives each task people and room that are
 * free by then, so that every person and every place passes from task to task in one chain. Earliest starts over links,
 * releases and these chains then keep every limit whatever the minutes turn out to be. Starts come out as just these
 * earliest starts: no later than in the schedule, unless a wait is so negative that a task started before what it
 * comes after. A hand-over that a link implies anyway is left out.
 *
 * Where people cross from bank to bank, or crews change, a task may come later than in the schedule, by how they pass:
 * then all is placed again in that order around the later starts, until nothing is later. Null when that finds no time
 * within the hours of the crews or for what is fixed.
 * Returns the tasks by their number in the compilation.
 */
export function handOver(
  manning: Manning,
  past: SettledPast,
  compilation: Compilation,
  schedule: Schedule,
): Handed | null {
  const later = new Later(compilation.compiled, schedule);
  const steady = manning.strengths.every((steps) => steps.length === 1);
  for (let round = 0; round < mostRounds; round += 1) {
    const passed = passOn(manning, past, compilation, later.schedule);
    if ('handOvers' in passed) {
      const exact = steady && compilation.compiled.crossing === 0;
      if (exact || !later.than(passed.tasks)) {
        return passed;
      }
    } else {
      later.raise(passed.number, passed.from);
    }
    if (!later.place()) {
      return null;
    }
  }
  return null;
}

function passOn(
  manning: Manning,
  past: SettledPast,
  compilation: Compilation,
  schedule: Schedule,
): Handed | TooEarly {
  const { compiled } = compilation;
  const site = new Site(manning, past, compilation);
  const order = new Int32Array(compiled.count);
  new Ordering(compiled).along(schedule.start, new Uint8Array(compiled.count).fill(1), order);

  const handed: HandedTask[] = new Array(compiled.count);
  const arcs: HandOver[] = [];
  for (const number of order) {
    const task = compilation.tasks[number]!;
    const own = compilation.numberInLinks[number]!;
    const w = schedule.way[number]!;
    site.advance(schedule.start[number]!);
    const changed = site.changedAt(compilation.ways[w]!.crews);
    if (changed > schedule.start[number]!) {
      return { number, from: changed };
    }
    const wishes = wishesOf(compilation, own, task, w, bankOf(manning.zones, task));
    let release = Math.max(past.now, lastLoad(manning, task).in, compiled.from[w]!);
    const link = site.linkBound(own);
    let free = Math.max(release, link.bound);
    for (const { of, wish } of wishes) {
      free = Math.max(free, site.sources[of]!.freeAt(wish));
    }
    const pace = compiled.pace[w]!;
    const start = pace === null ? free : startAt(pace, free, compiled.seconds[w]!);
    const finish = finishOf(compiled, w, start);
    site.begin(own, start, finish);

    let reason: Reason | null = null;
    if (link.bound === start) {
      reason = { kind: 'link', task: site.taskOf(link.from).id };
    }
    const freedBy = new Set(link.finished);
    for (const { of, wish } of wishes) {
      const { kind, id, ...some } = site.nameOf(of);
      for (const share of site.sources[of]!.take(wish, start, finish, freedBy)) {
        const { amount, since, last } = share;
        release = Math.max(release, since);
        if (since === start && since > 0) {
          reason ??= { kind: someRestedUntil(manning, id, start) ? 'rest' : 'window', of: id };
        }
        const crosses = site.crossingOf(of, share, wish);
        for (const before of last) {
          const from = site.taskOf(before).id;
          if (site.finishOf(before) + crosses === start) {
            reason ??= { kind: crosses > 0 ? 'crossing' : kind, task: from, of: id };
          }
          if (!link.finished.has(before) || crosses > 0) {
            const wait = crosses > 0 ? { wait: crosses / 60 } : {};
            arcs.push({ from, to: task.id, kind, of: id, ...some, people: amount, ...wait });
          }
          freedBy.add(before);
        }
      }
    }
    if (compiled.fixed[number] === 1) {
      reason = { kind: 'fixed' };
    } else if (start > free) {
      reason = paceReason(manning, task, compilation.ways[w]!, start);
    }
    reason ??= releaseReason(manning, past, task, compilation.ways[w]!, start);
    handed[number] = { start, finish, release, reason };
  }
  return { tasks: handed, way: schedule.way, handOvers: lean(arcs) };
}

function wishesOf(
  { compiled }: Compilation,
  own: number,
  task: Task,
  w: number,
  bank: BankSide,
): { of: number; wish: Wish }[] {
  const { useHead, useOf, useAmount, across } = compiled;
  const wishes: { of: number; wish: Wish }[] = [];
  for (let use = useHead[w]!; use < useHead[w + 1]!; use += 1) {
    // Who is on which bank comes out of who passes to whom.
    if (across[useOf[use]!] === -1) {
      const wish = { task: own, amount: useAmount[use]!, keepOff: task.keepOff, bank };
      wishes.push({ of: useOf[use]!, wish });
    }
  }
  return wishes;
}

/** Why a task whose people and room are free earlier waits: for light, or until a crew is back from its rest. */
function paceReason({ work }: Manning, task: Task, way: Way, start: number): Reason {
  const same = (minutes: number) => Math.round(minutes * 60) === start;
  const { crews } = work;
  const resting = way.crews.find(
    ({ crew, people }) => people > 0 && crews[crew]!.rests?.some(({ to }) => same(to)),
  );
  if (resting && !(task.daylight && work.dark?.spells.some(({ to }) => same(to)))) {
    return { kind: 'rest', of: crews[resting.crew]!.id };
  }
  return { kind: 'light' };
}

/** Whether some of a crew, and not all, come back from a rest at that second. */
function someRestedUntil({ work }: Manning, crew: string, at: number): boolean {
  const { rests = [] } = work.crews.find(({ id }) => id === crew) ?? {};
  return rests.some(({ to, people }) => people !== undefined && Math.round(to * 60) === at);
}

/** Why a task starts then that neither links nor hand-overs hold back. */
function releaseReason(
  manning: Manning,
  past: SettledPast,
  task: Task,
  way: Way,
  start: number,
): Reason {
  const stores = lastLoad(manning, task);
  if (stores.load !== null && stores.in === start) {
    return { kind: 'load', of: stores.load };
  }
  const { crews } = manning.work;
  const late = way.crews.find(
    ({ crew, people }) => people > 0 && secondsNotBefore(crews[crew]!.from ?? 0) === start,
  );
  if (late && start > 0) {
    return { kind: 'window', of: crews[late.crew]!.id };
  }
  return { kind: start > 0 && start === past.now ? 'now' : 'start' };
}

/** Each hand-over once, its amounts added up; room that passes along with people says nothing of its own. */
function lean(arcs: readonly HandOver[]): HandOver[] {
  const byKey = new Map<string, HandOver>();
  const withPeople = new Set<string>();
  for (const arc of arcs) {
    const key = `${arc.from} ${arc.to} ${arc.kind} ${arc.of} ${arc.skill ?? ''}`;
    byKey.set(key, { ...arc, people: arc.people + (byKey.get(key)?.people ?? 0) });
    if (arc.kind === 'crew' && arc.skill === undefined) {
      withPeople.add(`${arc.from} ${arc.to}`);
    }
  }
  return [...byKey.values()].filter(
    ({ from, to, kind }) => kind !== 'zone' || !withPeople.has(`${from} ${to}`),
  );
}
