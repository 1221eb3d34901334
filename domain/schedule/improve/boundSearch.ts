import type { Compiled } from '../compile.ts';
import { headsAndTails } from '../headsAndTails.ts';
import { apart } from './crowds/apart.ts';
import { CrowdBound } from './crowds/crowdBound.ts';
import { Heaviest } from './crowds/heaviest.ts';
import type { Individual } from './individual.ts';

/** Larger orders of work take too long. */
const mostTasks = 500;

/**
 * The search for a bound that starts at `lower` seconds; null for work too large for it. What it finds holds for plans
 * that open before second `best`. `known` is a schedule of the same work to begin with.
 */
export function boundSearch(
  compiled: Compiled,
  lower: number,
  best: number,
  known: Individual | null,
): CrowdBound | null {
  if (compiled.count > mostTasks) {
    return null;
  }
  const times = headsAndTails(compiled);
  const heaviest = new Heaviest(compiled, apart(compiled, times, best));
  const bound = new CrowdBound(compiled, times, heaviest, lower);
  if (known) {
    bound.know(known);
  }
  return bound;
}
