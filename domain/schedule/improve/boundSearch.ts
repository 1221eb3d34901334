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
 * that open before `best` does: take the lesser of the two.
 */
export function boundSearch(
  compiled: Compiled,
  lower: number,
  best: Individual,
): CrowdBound | null {
  if (compiled.count > mostTasks) {
    return null;
  }
  const times = headsAndTails(compiled);
  const heaviest = new Heaviest(compiled, apart(compiled, times, best.opening));
  const bound = new CrowdBound(compiled, times, heaviest, lower);
  bound.know(best);
  return bound;
}
