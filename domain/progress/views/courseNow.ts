import { type Course, courseOf } from '../../forecast/course.ts';
import type { BuildState } from '../state.ts';
import { workAsTold } from './asTold.ts';
import { pastOf } from './past.ts';

/**
 * How the plan in force goes on from `now` (ISO 8601 UTC), with stores as told and the nights at the site; null without
 * a plan.
 */
export function courseNow(state: BuildState, now: string): Course | null {
  return state.plan && courseOf(workAsTold(state), state.plan, pastOf(state, now));
}
