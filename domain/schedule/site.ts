import type { Task } from '../tasks/task.ts';
import type { Compilation } from './compile.ts';
import { bankOf } from './crossing.ts';
import { Gate } from './gate.ts';
import type { Manning } from './manning.ts';
import type { HandOver } from './plan.ts';
import { Pool } from './pool.ts';
import type { Settled, SettledPast } from './settled.ts';
import type { Share, Source, Wish } from './source.ts';
import { type CrewMove, crewMoves } from './strength.ts';

/** What the links say about the start of a task. */
export type LinkBound = {
  /** Seconds. */
  readonly bound: number;
  /** Number of the task that sets it; -1 when the task comes after nothing. */
  readonly from: number;
  /** Numbers of the tasks that must be finished before it starts. */
  readonly finished: ReadonlySet<number>;
};

/**
 * Where everybody is while a schedule is gone through in order of start. Tasks go by their numbers in the links of all
 * tasks; what is settled is in place from the beginning.
 */
export class Site {
  /** By resource. */
  readonly sources: readonly Source[];
  readonly #manning: Manning;
  readonly #compilation: Compilation;
  readonly #crews: readonly Pool[];
  /** People who come, go or go over, from now on. */
  readonly #moves: readonly CrewMove[];
  #moved = 0;
  /** When the strength of each crew last changed, by its row. */
  readonly #changed: number[] = [];
  readonly #start: Float64Array;
  readonly #finish: Float64Array;

  constructor(manning: Manning, past: SettledPast, compilation: Compilation) {
    this.#manning = manning;
    this.#compilation = compilation;
    const { links, resources, compiled } = compilation;
    this.#start = new Float64Array(links.rows.length);
    this.#finish = new Float64Array(links.rows.length);
    const pools: Pool[] = [];
    this.sources = resources.unlimited.map((unlimited, of) => {
      if (unlimited) {
        return new Gate();
      }
      const { row } = resources.of[of]!;
      const steps = of < compiled.crewCount ? manning.strengths[row]! : [];
      const here = steps.findLast(({ from }) => from <= past.now)?.people;
      const crossing = of < compiled.crewCount ? manning.crossing : 0;
      const pool = new Pool(here ?? compiled.capacity[of]!, crossing);
      // Crews come first among the resources, so that a crew's row is its number here.
      pools.push(pool);
      return pool;
    });
    this.#crews = manning.crews ? pools.slice(0, compiled.crewCount) : [];
    this.#moves = manning.crews ? crewMoves(manning.work).filter(({ at }) => at > past.now) : [];
    const settled = [...past.tasks].map(([id, times]) => ({
      number: links.numbers.get(id) as number,
      times,
    }));
    for (const { number, times } of settled) {
      this.begin(number, times.start, times.finish);
    }
    // The last to finish first: where more are at work than there are, those who finish first share their people.
    settled.sort((one, other) => other.times.finish - one.times.finish);
    for (const { number, times } of settled) {
      if (times.atWork) {
        this.#overlay(number, times);
      }
    }
  }

  /** Lets people come, go and go over between crews as they do up to `time`. Called for rising times. */
  advance(time: number): void {
    for (
      ;
      this.#moved < this.#moves.length && this.#moves[this.#moved]!.at <= time;
      this.#moved += 1
    ) {
      const { at, from, to, people } = this.#moves[this.#moved]!;
      for (const row of [from, to]) {
        if (row !== null) this.#changed[row] = at;
      }
      const gone =
        from === null
          ? [{ amount: people, free: at, since: at, last: [], bank: null }]
          : this.#crews[from]!.leave(people, at);
      if (to !== null) {
        this.#crews[to]!.join(gone, at);
      }
    }
  }

  /** When one of these crews last changed, as far as time has gone on. Seconds. */
  changedAt(crews: readonly { readonly crew: number }[]): number {
    return Math.max(0, ...crews.map(({ crew }) => this.#changed[crew] ?? 0));
  }

  #overlay(number: number, times: Settled): void {
    const task = this.taskOf(number);
    for (const { of, amount } of this.#compilation.resources.held(task, times)) {
      const bank = bankOf(this.#manning.zones, task);
      const wish = { task: number, amount, keepOff: task.keepOff, bank };
      this.sources[of]!.overlay(wish, times.finish);
    }
  }

  begin(number: number, start: number, finish: number): void {
    this.#start[number] = start;
    this.#finish[number] = finish;
  }

  finishOf(number: number): number {
    return this.#finish[number]!;
  }

  /** Seconds that these people of a crew take to where they are wanted; 0 for all else. */
  crossingOf(of: number, share: Share, wish: Wish): number {
    return this.#crews[of]?.crossingOf(share, wish) ?? 0;
  }

  taskOf(number: number): Task {
    return this.#manning.work.tasks[this.#compilation.links.rows[number]!]!;
  }

  nameOf(of: number): { kind: HandOver['kind']; id: string; skill?: string } {
    const { kind, row, skill } = this.#compilation.resources.of[of]!;
    const { crews, zones, equipment = [] } = this.#manning.work;
    const things = { crew: crews, zone: zones, equipment };
    return { kind, id: things[kind][row]!.id, ...(skill !== undefined && { skill }) };
  }

  linkBound(to: number): LinkBound {
    const { beforeHead, before, beforeFromStart, beforeWait } = this.#compilation.links;
    let bound = Number.NEGATIVE_INFINITY;
    let binding = -1;
    const finished = new Set<number>();
    for (let at = beforeHead[to]!; at < beforeHead[to + 1]!; at += 1) {
      const from = before[at]!;
      const counted = beforeFromStart[at] ? this.#start[from]! : this.#finish[from]!;
      if (counted + beforeWait[at]! >= bound) {
        bound = counted + beforeWait[at]!;
        binding = from;
      }
      if (!beforeFromStart[at] && beforeWait[at]! >= 0) {
        finished.add(from);
      }
    }
    return { bound, from: binding, finished };
  }
}
