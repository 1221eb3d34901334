import { anyWay, sameWay, usualPeople } from '../schedule.ts';
import type { Random } from '../search/random.ts';
import type { Individual } from './individual.ts';
import type { Placer } from './placer.ts';

/** Least and most of the build, as shares, that a child takes whole from one parent. */
const leastStretch = 0.25;
const mostStretch = 0.75;

/** Share of the tasks that a child is given in any way at all, at most. */
const strayWays = 0.1;

/**
 * Children that keep the stretch of time in which one parent uses its crews and zones most densely, with the ways it has
 * there, and take the rest, order and ways, from the other parent (dense windows: Valls, Ballestin and Quintanilla,
 * European Journal of Operational Research 185, 2008; Debels and Vanhoucke, Operations Research 55, 2007).
 */
export class Crossover {
  readonly key: Float64Array;
  readonly #placer: Placer;
  readonly #random: Random;
  readonly #density: Float64Array;

  constructor(placer: Placer, random: Random) {
    this.#placer = placer;
    this.#random = random;
    const { compiled } = placer;
    this.key = new Float64Array(compiled.count);
    this.#density = new Float64Array(compiled.seconds.length);
    for (let w = 0; w < compiled.seconds.length; w += 1) {
      for (let use = compiled.useHead[w]!; use < compiled.useHead[w + 1]!; use += 1) {
        this.#density[w]! += compiled.useAmount[use]! / compiled.capacity[compiled.useOf[use]!]!;
      }
    }
  }

  /** Lays the child's order in `key`, its ways in the placer's schedule, and which of them it holds to in `pinned`. */
  cross(dense: Individual, rest: Individual): void {
    const { compiled, now, pinned } = this.#placer;
    const [from, to] = this.#densest(dense);
    const beyond = dense.opening + rest.opening;
    const stray = strayWays * this.#random.unit() ** 2;
    const held = this.#random.unit();
    // Of those that are not held to: how many may have other than the usual people.
    const usual = compiled.otherPeople === 0 ? 1 : held + (1 - held) * this.#random.unit();
    for (let task = 0; task < compiled.count; task += 1) {
      const start = dense.start[task]!;
      const kept = start >= from && start < to;
      const parent = kept ? dense : rest;
      this.key[task] = kept
        ? beyond + start
        : rest.start[task]! + (rest.start[task]! < from ? 0 : 2 * beyond);
      now.way[task] = parent.way[task]!;
      const first = compiled.wayHead[task]!;
      const ways = compiled.wayHead[task + 1]! - first;
      pinned[task] = sameWay;
      if (ways > 1) {
        const draw = this.#random.unit();
        if (draw < stray) {
          now.way[task] = first + this.#random.below(ways);
        } else {
          pinned[task] = draw < held ? sameWay : draw < usual ? usualPeople : anyWay;
        }
      }
    }
    this.#keepLinks(dense, from, to);
  }

  /** The stretch of a random length that uses most, from and to: begins where a task does. */
  #densest({ start, way, opening }: Individual): [number, number] {
    const { only, compiled } = this.#placer;
    const share = leastStretch + this.#random.unit() * (mostStretch - leastStretch);
    const span = share * opening;
    // Use up to each of a hundred moments of equal distance.
    const step = Math.max(1, opening / moments);
    const use = new Float64Array(moments + 2);
    for (let task = 0; task < start.length; task += 1) {
      if (only[task] === 0) {
        continue;
      }
      const first = Math.min(moments, Math.max(0, Math.floor(start[task]! / step)));
      const length = compiled.seconds[way[task]!]!;
      const last = Math.min(moments, Math.max(0, Math.floor((start[task]! + length) / step)));
      use[first]! += this.#density[way[task]!]!;
      use[last]! -= this.#density[way[task]!]!;
    }
    const total = new Float64Array(moments + 2);
    for (let at = 0, rate = 0; at <= moments; at += 1) {
      rate += use[at]!;
      total[at + 1] = total[at]! + rate;
    }
    const wide = Math.max(1, Math.round(span / step));
    let best = 0;
    for (let at = 1; at + wide <= moments + 1; at += 1) {
      if (total[at + wide]! - total[at]! > total[best + wide]! - total[best]!) {
        best = at;
      }
    }
    return [best * step, (best + wide) * step];
  }

  /** Makes keys rise along links: what the kept stretch needs comes before it, what needs it after. */
  #keepLinks({ start }: Individual, from: number, to: number): void {
    const { count, beforeHead, before, afterHead, after } = this.#placer.compiled;
    const key = this.key;
    for (let task = count - 1; task >= 0; task -= 1) {
      if (start[task]! >= from && start[task]! < to) {
        continue;
      }
      for (let at = afterHead[task]!; at < afterHead[task + 1]!; at += 1) {
        key[task] = Math.min(key[task]!, key[after[at]!]!);
      }
    }
    for (let task = 0; task < count; task += 1) {
      for (let at = beforeHead[task]!; at < beforeHead[task + 1]!; at += 1) {
        key[task] = Math.max(key[task]!, key[before[at]!]!);
      }
    }
  }
}

/** Into so many parts a build is cut to find where it is dense. */
const moments = 200;
