import type { Work } from '../../tasks/work.ts';
import type { Plan } from '../plan.ts';

/** How long the people of a crew stand waiting between the crew's first and last work. */
export type IdleTime = {
  readonly crew: string;
  /** Added up over its people, in person-minutes. */
  readonly personMinutes: number;
  /** Minutes after the start of the build; null for a crew without work. */
  readonly firstWork: number | null;
  readonly lastWork: number | null;
};

/** Idle time of every crew in a plan, in the order of the work. */
export function idleTimes(work: Work, plan: Plan): IdleTime[] {
  return work.crews.map(({ id, people }) => {
    let firstWork = Number.POSITIVE_INFINITY;
    let lastWork = 0;
    let worked = 0;
    for (const { crews, start, finish } of plan.tasks) {
      const own = crews.find(({ crew }) => crew === id);
      if (own && own.people > 0 && finish > start) {
        firstWork = Math.min(firstWork, start);
        lastWork = Math.max(lastWork, finish);
        worked += own.people * (finish - start);
      }
    }
    if (worked === 0) {
      return { crew: id, personMinutes: 0, firstWork: null, lastWork: null };
    }
    // People lent or told above the crew's strength may have worked more than it could.
    const personMinutes = Math.max(0, people * (lastWork - firstWork) - worked);
    return { crew: id, personMinutes, firstWork, lastWork };
  });
}
