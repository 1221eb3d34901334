import type { Task } from '../tasks/task.ts';
import { type Compilation, loadsIn } from './compile.ts';
import { Ordering } from './ordering.ts';
import type { HandOver, Reason } from './plan.ts';
import { Pool, type Share } from './pool.ts';
import type { Schedule } from './schedule.ts';
import type { Settled, SettledPast } from './settled.ts';
import type { Manning } from './ways.ts';

/** A task as it comes out of the hand-overs. Seconds. */
export type HandedTask = {
  readonly start: number;
  readonly finish: number;
  readonly release: number;
  readonly reason: Reason;
};

/**
 * Turns a schedule into hand-overs: goes through it in order of start and gives each task people and room that are
 * free by then, so that every person and every place passes from task to task in one chain. Earliest starts over links,
 * releases and these chains then keep every limit whatever the minutes turn out to be. Starts come out as just these
 * earliest starts: no later than in the schedule, unless a wait is so negative that a task started before what it
 * comes after. A hand-over that a link implies anyway is left out.
 * Returns the tasks by their number in the compilation.
 */
export function handOver(
  manning: Manning,
  past: SettledPast,
  compilation: Compilation,
  schedule: Schedule,
): { tasks: HandedTask[]; handOvers: HandOver[] } {
  const { compiled, resources } = compilation;
  const site = new Site(manning, past, compilation);
  const order = new Int32Array(compiled.count);
  new Ordering(compiled).along(schedule.start, new Uint8Array(compiled.count).fill(1), order);

  const handed: HandedTask[] = new Array(compiled.count);
  const arcs: HandOver[] = [];
  for (const number of order) {
    const task = compilation.tasks[number]!;
    const own = compilation.numberInLinks[number]!;
    const w = schedule.way[number]!;
    const loads = loadsIn(manning, task);
    const release = Math.max(past.now, loads, compiled.from[w]!);
    const link = site.linkBound(own);
    let start = Math.max(release, link.bound);
    for (let use = compiled.useHead[w]!; use < compiled.useHead[w + 1]!; use += 1) {
      const free = site.pools[compiled.useOf[use]!]!.freeAt(compiled.useAmount[use]!);
      start = Math.max(start, free);
    }
    const finish = start + compiled.seconds[w]!;
    site.begin(own, start, finish);

    let reason: Reason | null = null;
    if (link.bound === start) {
      reason = { kind: 'link', task: site.idOf(link.from) };
    }
    const freedBy = new Set(link.implied);
    for (let use = compiled.useHead[w]!; use < compiled.useHead[w + 1]!; use += 1) {
      const of = compiled.useOf[use]!;
      const { kind, id } = site.nameOf(of);
      const rather = (share: Share) => site.preference(share, freedBy, resources.unlimited[of]!);
      const pool = site.pools[of]!;
      for (const share of pool.take(compiled.useAmount[use]!, start, finish, own, rather)) {
        for (const last of share.last) {
          if (reason === null && share.free === start) {
            reason = { kind, task: site.idOf(last), of: id };
          }
          if (!link.implied.has(last)) {
            const people = site.peopleHanded(share, last, own, of);
            arcs.push({ from: site.idOf(last), to: task.id, kind, of: id, people });
          }
          freedBy.add(last);
        }
      }
    }
    reason ??= site.releaseReason(task, start, loads, compilation.ways[w]!.crews);
    handed[number] = { start, finish, release, reason };
  }
  return { tasks: handed, handOvers: lean(arcs) };
}

/** Where everybody is while the schedule is gone through. Tasks go by their numbers in the links of all tasks. */
class Site {
  readonly pools: readonly Pool[];
  readonly #manning: Manning;
  readonly #past: SettledPast;
  readonly #compilation: Compilation;
  readonly #start: Float64Array;
  readonly #finish: Float64Array;

  constructor(manning: Manning, past: SettledPast, compilation: Compilation) {
    const { work } = manning;
    this.#manning = manning;
    this.#past = past;
    this.#compilation = compilation;
    const { rows } = compilation.links;
    this.#start = new Float64Array(rows.length);
    this.#finish = new Float64Array(rows.length);
    this.pools = [...compilation.compiled.capacity].map((amount) => new Pool(amount));
    const atWork: { number: number; finish: number }[] = [];
    for (const [number, row] of rows.entries()) {
      const settled = past.tasks.get(work.tasks[row]!.id);
      if (settled) {
        this.begin(number, settled.start, settled.finish);
        if (settled.atWork) {
          atWork.push({ number, finish: settled.finish });
        }
      }
    }
    // The last to finish first: where more are at work than there are, those who finish first share their people.
    atWork.sort((one, other) => other.finish - one.finish);
    for (const { number, finish } of atWork) {
      const task = this.#taskOf(number);
      const settled = past.tasks.get(task.id) as Settled;
      for (const { of, amount } of compilation.resources.held(task, settled)) {
        this.pools[of]!.overlay(amount, finish, number);
      }
    }
  }

  begin(number: number, start: number, finish: number): void {
    this.#start[number] = start;
    this.#finish[number] = finish;
  }

  idOf(number: number): string {
    return this.#taskOf(number).id;
  }

  nameOf(of: number): { kind: 'crew' | 'zone'; id: string } {
    const { kind, row } = this.#compilation.resources.of[of]!;
    const { crews, zones } = this.#manning.work;
    return { kind, id: kind === 'crew' ? crews[row]!.id : zones[row]!.id };
  }

  /** The latest bound of all links into a task, what sets it, and what must be finished before the task starts. */
  linkBound(to: number): { bound: number; from: number; implied: Set<number> } {
    const { beforeHead, before, beforeFromStart, beforeWait } = this.#compilation.links;
    let bound = Number.NEGATIVE_INFINITY;
    let binding = -1;
    const implied = new Set<number>();
    for (let at = beforeHead[to]!; at < beforeHead[to + 1]!; at += 1) {
      const from = before[at]!;
      const counted = beforeFromStart[at] ? this.#start[from]! : this.#finish[from]!;
      if (counted + beforeWait[at]! >= bound) {
        bound = counted + beforeWait[at]!;
        binding = from;
      }
      if (!beforeFromStart[at] && beforeWait[at]! >= 0) {
        implied.add(from);
      }
    }
    return { bound, from: binding, implied };
  }

  /**
   * Rather people from tasks that must be finished anyway, then those whom nobody has had yet, then others.
   * Where room has no limit, rather room that no task without keep-off has had: only keep-off makes anybody wait.
   */
  preference(share: Share, freedBy: ReadonlySet<number>, unlimited: boolean): number {
    if (share.last.length > 0 && share.last.every((last) => freedBy.has(last))) {
      return 0;
    }
    const free = share.last.every((last) => unlimited && this.#taskOf(last).keepOff);
    return free ? 1 : 2;
  }

  /** Room without a limit is counted by the people of the task that is not the keep-off one. */
  peopleHanded(share: Share, from: number, to: number, of: number): number {
    const both = this.#taskOf(from).keepOff && this.#taskOf(to).keepOff;
    if (!this.#compilation.resources.unlimited[of] || !both) {
      return share.amount;
    }
    return this.#taskOf(to).needs.reduce((sum, need) => sum + need.people.usual, 0);
  }

  /** Why a task starts then that neither links nor hand-overs hold back. */
  releaseReason(
    task: Task,
    start: number,
    loads: number,
    crews: readonly { readonly crew: number; readonly people: number }[],
  ): Reason {
    if (start === 0) {
      return { kind: 'start' };
    }
    const { work } = this.#manning;
    const load = work.loads.find(
      ({ id, arrives }) => task.loads.includes(id) && Math.ceil(arrives * 60) === start,
    );
    if (start === loads && load) {
      return { kind: 'load', of: load.id };
    }
    const late = crews.find(
      ({ crew, people }) => people > 0 && Math.ceil((work.crews[crew]!.from ?? 0) * 60) === start,
    );
    if (late) {
      return { kind: 'window', of: work.crews[late.crew]!.id };
    }
    return { kind: start === this.#past.now ? 'now' : 'start' };
  }

  #taskOf(number: number): Task {
    return this.#manning.work.tasks[this.#compilation.links.rows[number]!]!;
  }
}

/** Each hand-over once, its people added up; room that passes along with people says nothing of its own. */
function lean(arcs: readonly HandOver[]): HandOver[] {
  const byKey = new Map<string, HandOver>();
  const withPeople = new Set<string>();
  for (const arc of arcs) {
    const key = `${arc.from} ${arc.to} ${arc.kind} ${arc.of}`;
    byKey.set(key, { ...arc, people: arc.people + (byKey.get(key)?.people ?? 0) });
    if (arc.kind === 'crew') {
      withPeople.add(`${arc.from} ${arc.to}`);
    }
  }
  return [...byKey.values()].filter(
    ({ from, to, kind }) => kind === 'crew' || !withPeople.has(`${from} ${to}`),
  );
}
