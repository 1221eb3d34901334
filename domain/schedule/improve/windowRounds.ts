import { sameWay } from '../schedule.ts';
import type { Random } from '../search/random.ts';
import { type Individual, remember } from './individual.ts';
import type { Placer } from './placer.ts';
import { plainOf } from './plainOf.ts';
import { WindowSearch } from './windowSearch.ts';

/** Into how many units a build is cut where windows are re-solved: few are quick, many are close. */
const coarse = 300;
const fine = 1200;

/** Rounds in which windows of a schedule are re-solved with the ways it has, each find placed in the work itself. */
export class WindowRounds {
  readonly #placer: Placer;
  readonly #random: Random;
  readonly #note: (opening: number) => void;
  readonly #isOver: () => boolean;
  #known: { readonly way: Int32Array; readonly search: WindowSearch } | null = null;

  /** `note` is told of each schedule as it stands in the placer. */
  constructor(
    placer: Placer,
    random: Random,
    note: (opening: number) => void,
    isOver: () => boolean,
  ) {
    this.#placer = placer;
    this.#random = random;
    this.#note = note;
    this.#isOver = isOver;
  }

  /**
   * Goes on until so many windows in a row have gained nothing; `best` is the earliest opening known. Returns the last
   * schedule made, null where none was.
   */
  round(base: Individual, best: number, isFine: boolean, patience: number): Individual | null {
    const { now, pinned } = this.#placer;
    let last: Individual | null = null;
    const unit = Math.max(1, Math.round(best / (isFine ? fine : coarse)));
    this.#windowsOf(base, unit).round(base, patience, (key) => {
      now.way.set(base.way);
      pinned.fill(sameWay);
      const opening = this.#placer.forward(key);
      this.#note(opening);
      last = opening < Number.POSITIVE_INFINITY ? remember(now, opening) : last;
    });
    return last;
  }

  /** Windows with the same ways and unit go on from what they have learned. */
  #windowsOf({ way }: Individual, unit: number): WindowSearch {
    const known = this.#known;
    if (known?.search.view.unit === unit && known.way.every((own, at) => own === way[at])) {
      return known.search;
    }
    const view = plainOf(this.#placer.compiled, way, unit);
    const search = new WindowSearch(view, this.#placer, this.#random, this.#isOver);
    this.#known = { way, search };
    return search;
  }
}
