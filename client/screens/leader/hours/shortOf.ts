import { strengths } from '#domain/schedule/strength.ts';
import type { Crew, Work } from '#domain/tasks/work.ts';

/** A crew of which more people would be lent or resting than it has. `at` in minutes after the start of the build. */
export type Short = { readonly crew: Crew; readonly at: number; readonly missing: number };

/** The first moment at which each crew would have fewer people than none, for those that would. */
export function shortOf(work: Work): Short[] {
  const steps = strengths(work);
  return work.crews.flatMap((crew, row) => {
    const below = steps[row]!.find(({ people }) => people < 0);
    return below ? [{ crew, at: below.from / 60, missing: -below.people }] : [];
  });
}
