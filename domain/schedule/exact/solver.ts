import type { Effort } from '../search/decoder.ts';
import type { Problem } from '../search/problem.ts';
import type { Random } from '../search/random.ts';
import { Learning } from './learning.ts';
import { network } from './network.ts';
import { Nogoods } from './nogoods.ts';
import { Propagation } from './propagation.ts';
import { Reasons } from './reasons.ts';
import { Trail } from './trail.ts';

/** How one run of the exact search is led. All runs share what they learn. */
export type Lead = {
  /** Dead ends after which the run ends. */
  readonly deadEnds: number;
  /** Starts to lean on, by task. */
  readonly leanOn: Int32Array;
  /** Tasks to hold at those starts first, in this order, as far as they can be held there. */
  readonly hold: Int32Array;
};

/** How a run ended: a shorter schedule found, none exists, or the dead ends spent. */
export type Outcome = 'shorter' | 'none shorter' | 'spent';

/**
 * Exact search for ever shorter schedules by lazy clause generation over bounds (Schutt, Feydy, Stuckey and Wallace 2011):
 * bounds are followed through links and sure use, every dead end leaves a nogood that rules out all orders that fail for
 * the same reason.
 */
export class ExactSolver {
  /** The shortest schedule known, and its length. */
  readonly starts: Int32Array;
  length: number;
  readonly #problem: Problem;
  readonly #sink: number;
  readonly #durations: Int32Array;
  readonly #trail: Trail;
  readonly #nogoods: Nogoods;
  readonly #propagation: Propagation;
  readonly #learning: Learning;
  readonly #random: Random;
  readonly #shouldStop: () => boolean;
  #mostNogoods = FIRST_NOGOODS;

  /** Looks for schedules shorter than `length`. Effort is counted as Propagation says. */
  constructor(
    problem: Problem,
    starts: Int32Array,
    length: number,
    random: Random,
    effort: Effort,
    shouldStop: () => boolean,
  ) {
    const { tasks } = problem;
    this.#problem = problem;
    this.starts = starts.slice();
    this.length = length;
    const net = network(problem, length);
    this.#sink = tasks;
    this.#durations = net.durations;
    this.#trail = new Trail(net.bounds);
    this.#nogoods = new Nogoods(net.bounds);
    const reasons = new Reasons(problem, net, this.#trail, this.#nogoods);
    this.#propagation = new Propagation(problem, net, this.#trail, this.#nogoods, reasons, effort);
    this.#learning = new Learning(this.#trail, this.#nogoods, reasons, this.#propagation);
    this.#random = random;
    this.#shouldStop = shouldStop;
  }

  /** No schedule is shorter than this. */
  get lower(): number {
    return this.#trail.levels.length === 0 ? this.#trail.bounds[2 * this.#sink]! : 0;
  }

  /** Takes over a shorter schedule found elsewhere. Starts are copied. */
  improve(starts: Int32Array, length: number): void {
    this.starts.set(starts);
    this.length = length;
  }

  /** One run. Ends at the root, so that `lower` can be read. */
  run(lead: Lead): Outcome {
    const { levels } = this.#trail;
    const propagation = this.#propagation;
    if (!propagation.decide(2 * this.#sink + 1, 1 - this.length)) return 'none shorter';
    let left = lead.deadEnds;
    let held = 0;
    for (;;) {
      if (!propagation.run()) {
        left -= 1;
        held = 0;
        if (levels.length === 0 || !this.#learning.learn()) return 'none shorter';
        if (left > 0 && !this.#shouldStop()) continue;
        propagation.backTo(0);
        if (!propagation.run()) return 'none shorter';
        this.#tidy();
        return 'spent';
      }
      while (held < lead.hold.length && !this.#decideHeld(lead.hold[held]!, lead.leanOn)) held += 1;
      if (held < lead.hold.length) continue;
      if (!this.#decideNext(lead.leanOn)) {
        this.#accept();
        return 'shorter';
      }
    }
  }

  #tidy(): void {
    if (this.#nogoods.count <= this.#mostNogoods) return;
    this.#propagation.tidy();
    this.#mostNogoods *= MORE_NOGOODS;
  }

  #decide(bound: number, value: number): void {
    this.#trail.levels.push(this.#trail.length);
    this.#propagation.decide(bound, value);
  }

  /** Moves a task one step towards its start in `leanOn`; false when it stands or cannot stand there. */
  #decideHeld(task: number, leanOn: Int32Array): boolean {
    const early = this.#trail.bounds[2 * task]!;
    const late = -this.#trail.bounds[2 * task + 1]!;
    const start = leanOn[task]!;
    if (early === late || start < early || start > late) return false;
    if (start < late) this.#decide(2 * task + 1, -start);
    else this.#decide(2 * task, start);
    return true;
  }

  /** Decides on the open task that dead ends name most, at or around its start in `leanOn`; false when none is open. */
  #decideNext(leanOn: Int32Array): boolean {
    const bounds = this.#trail.bounds;
    const activity = this.#learning.activity;
    let chosen = -1;
    for (let task = 0; task < this.#problem.tasks; task++) {
      const early = bounds[2 * task]!;
      if (early === -bounds[2 * task + 1]!) continue;
      if (
        chosen < 0 ||
        activity[task]! > activity[chosen]! ||
        (activity[task] === activity[chosen] && early < bounds[2 * chosen]!)
      ) {
        chosen = task;
      }
    }
    if (chosen < 0) return false;
    const early = bounds[2 * chosen]!;
    const late = -bounds[2 * chosen + 1]!;
    const start = leanOn[chosen]!;
    if (start <= early) this.#decide(2 * chosen + 1, -early);
    else if (start >= late) this.#decide(2 * chosen, late);
    else if (this.#random.below(2) === 0) this.#decide(2 * chosen + 1, -start);
    else this.#decide(2 * chosen, start);
    return true;
  }

  #accept(): void {
    let length = 0;
    for (let task = 0; task < this.#problem.tasks; task++) {
      this.starts[task] = this.#trail.bounds[2 * task]!;
      length = Math.max(length, this.starts[task]! + this.#durations[task]!);
    }
    this.length = length;
    this.#propagation.backTo(0);
  }
}

/** Nogoods kept before the first time of forgetting, and how many more each time. */
const FIRST_NOGOODS = 8000;
const MORE_NOGOODS = 1.15;
