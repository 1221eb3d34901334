import { sameWay } from '../../schedule.ts';
import type { Random } from '../../search/random.ts';
import type { Individual } from '../individual.ts';
import type { Placer } from '../placer.ts';
import { MannedSearch } from './mannedSearch.ts';

/**
 * Where a plain network with ways says nearly all there is to say: up to which share of a stint the work itself is bred,
 * the network is bred, and stretches of it are freed. The rest of the stint is for windows.
 */
export const bredInWork = 0.05;
const bredManned = 0.55;
const freedManned = [0.75, 0.95];

/** Into how many units a build is cut here, and the size of the population: for so long a stint, and at most. */
const units = 600;
const usualSize = 15;
const usualStint = 1000;
const mostSize = 600;

/** Schedules between two turns at the bound, and how many a turn is given for each: most of them are quickly made. */
const betweenBounds = 200;
const boundShare = 0.2;

/** The search that the stint is a part of. */
export type Host = {
  readonly placer: Placer;
  readonly random: Random;
  readonly rules: readonly Float64Array[];
  /** The best schedule and others as good, of which there is one at least. */
  readonly equals: () => readonly Individual[];
  readonly schedules: () => number;
  readonly isOver: () => boolean;
  /** Told of each schedule as it stands in the placer. */
  readonly note: (opening: number) => void;
  readonly raiseBound: (schedules: number) => void;
};

/**
 * Breeds on the plain network with all ways, then frees stretches of the best on it; what comes out is placed in the
 * work. The stint began when `began` schedules had been made and is `length` of them long.
 */
export function mannedStint(host: Host, began: number, length: number): void {
  const { placer, random, rules, equals, schedules, isOver, note, raiseBound } = host;
  const { now, pinned, compiled } = placer;
  const unit = Math.max(1, Math.round(equals()[0]!.opening / units));
  const manned = new MannedSearch(compiled, unit, rules, random, placer);
  let raised = schedules();
  const before = (share: number) => () => {
    const made = schedules() - raised;
    if (made > betweenBounds) {
      raised += made;
      raiseBound(made * boundShare);
    }
    return !isOver() && schedules() < began + share * length;
  };
  const place = (key: Float64Array, way: Int32Array) => {
    now.way.set(way);
    pinned.fill(sameWay);
    note(placer.forward(key));
  };
  const size = Math.max(6, Math.round(usualSize * (length / usualStint) ** 0.6));
  manned.breed(equals(), Math.min(mostSize, size), before(bredManned), place);
  for (const share of freedManned) {
    manned.free(equals()[random.below(equals().length)]!, before(share), place);
  }
}
