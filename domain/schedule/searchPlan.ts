import type { Compiled } from './compile.ts';
import { exactUnit } from './improve/plainOf.ts';
import { PlainPlanSearch } from './improve/plainPlanSearch.ts';
import { PlanSearch } from './improve/planSearch.ts';
import type { Found, SearchOptions } from './improve/searchOptions.ts';

/** Most units of time in a build for the plain search: with more of them it is slow. */
const mostUnits = 3000;

/**
 * Looks for the earliest opening, from the priority rules on, and for a bound that shows how much earlier there could be
 * one. What does not lead to the opening is placed last, around what does. The same input gives the same schedule.
 * Null when no order was found that keeps to the hours of the crews.
 */
export function searchPlan(compiled: Compiled, options: SearchOptions): Found | null {
  const { forBounds = compiled } = options;
  const unit = forBounds === compiled ? exactUnit(compiled) : null;
  if (unit !== null && unit > 0 && options.bound <= mostUnits * unit && !options.like) {
    return new PlainPlanSearch(compiled, options, unit).run();
  }
  const found = new PlanSearch(compiled, options, compiled.toOpen).run();
  if (found) {
    return found;
  }
  // What does not lead to the opening may need hours that what does has taken: then all is placed together.
  return new PlanSearch(compiled, options, new Uint8Array(compiled.count).fill(1)).run();
}
