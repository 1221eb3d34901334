import type { Compiled } from '../compile.ts';
import { headsAndTails } from '../headsAndTails.ts';
import { apart } from './crowds/apart.ts';
import { CrowdBound } from './crowds/crowdBound.ts';
import { Heaviest } from './crowds/heaviest.ts';
import type { Individual } from './individual.ts';
import { RelaxedBound } from './relaxed/relaxedBound.ts';
import { relaxedOf } from './relaxed/relaxedOf.ts';

/** Larger orders of work take too long. */
const mostTasks = 500;

/** Steps towards the bound by crowds, and schedules of relaxed work, for each schedule made. */
const crowdSteps = 1.5;
const relaxedSchedules = 2;

/** Raises the bound while plans are searched for: in small turns, so that plans come first. */
export class Raising {
  /** Seconds; nothing opens earlier. */
  lower: number;
  readonly #crowds: CrowdBound;
  readonly #relaxed: RelaxedBound;

  /** What it finds holds for plans that open before second `best`; `known` is a schedule to begin with. */
  constructor(
    compiled: Compiled,
    lower: number,
    best: number,
    known: Individual | null,
    seed: number,
  ) {
    this.lower = lower;
    const times = headsAndTails(compiled);
    const heaviest = new Heaviest(compiled, apart(compiled, times, best));
    this.#crowds = new CrowdBound(compiled, times, heaviest, lower);
    this.#relaxed = new RelaxedBound(relaxedOf(compiled, times, best), lower, seed);
    if (known) {
      this.#crowds.know(known);
    }
  }

  static isFor({ count }: Compiled): boolean {
    return count <= mostTasks;
  }

  /** Nothing more can be gained. */
  get isDone(): boolean {
    return this.#crowds.isDone && this.#relaxed.isDone;
  }

  /** Goes on for as long as suits so many schedules made. */
  run(schedules: number, shouldStop: () => boolean): void {
    this.#relaxed.run(relaxedSchedules * schedules, shouldStop);
    this.#crowds.run(Math.ceil(crowdSteps * schedules));
    this.lower = Math.max(this.lower, this.#crowds.lower, this.#relaxed.lower);
  }
}
