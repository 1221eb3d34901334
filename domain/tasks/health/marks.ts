/**
 * Marks that an order of work is held to. The published ones are for programmes of months and years:
 * US GAO, Schedule Assessment Guide, GAO-16-89G, December 2015 (ten best practices), and DCMA-EA PAM 200.1, EVMS
 * Program Analysis Pamphlet, section 4, October 2012 (fourteen numeric checks). What they count in shares is taken as
 * it stands; what they count in working days is restated in minutes here, and every finding says so.
 */
export const marks = {
  /** Check 1: tasks missing something before or after them, as a share of those not done. */
  openEnds: 0.05,
  /** Check 3: links with a wait, as a share of all links. */
  waits: 0.05,
  /** Check 4: at least nine links in ten count from a finish. */
  startLinks: 0.1,
  /** Checks 6 and 8: tasks over the mark for float or for length, as a share of those not done. */
  overMark: 0.05,
  /**
   * Minutes. Check 8 marks tasks over 44 working days: two monthly reports. A build is reported on about every half
   * hour, so two reports are an hour. Restated by us; no source gives it in minutes.
   */
  longTask: 60,
  /**
   * Minutes. Check 6 marks floats over 44 working days, long against the months of a programme. Four hours are half a
   * shift of eight: what can wait that long could be left to the relief. Restated by us; no source gives it in minutes.
   */
  largeFloat: 240,
  /** Minutes. Check 10 looks at tasks of a day or more without people; ten minutes here, restated by us. */
  nobodyNamed: 10,
  /** Minutes that the delay test adds. Check 12 adds 600 working days: longer than any network it is used on. */
  delay: 1_000_000,
  /** Check 13: (length of the critical path + float) / length of the critical path. */
  pathIndex: 0.95,
  /** Check 14: tasks done / tasks that should be done. */
  doneIndex: 0.95,
} as const;

const guide = 'US GAO Schedule Assessment Guide GAO-16-89G (2015)';
const pamphlet = 'DCMA-EA PAM 200.1 (2012)';

export const sources = {
  scheduler: 'No plan can be made so: the scheduler refuses it.',
  openEnds: `${guide}, practice 2; ${pamphlet}, check 1: at most 5 % of the tasks not done.`,
  dangling: `${guide}, practice 2: every finish leads to something.`,
  delay: `${pamphlet}, check 12: a large delay to a critical task moves the finish by as much.`,
  holds:
    'Common practice, no source: a hold stands between the work it looks at and what must wait for it.',
  negativeWaits: `${pamphlet}, check 2: none.`,
  waits: `${pamphlet}, check 3: at most 5 % of the links.`,
  startLinks: `${pamphlet}, check 4: at least 90 % of the links count from a finish.`,
  longTask: `${pamphlet}, check 8: at most 5 % of the tasks over 44 working days, two monthly reports; restated for a build that is reported on each half hour: over ${marks.longTask} min.`,
  largeFloat: `${pamphlet}, check 6: at most 5 % of the tasks over 44 working days; restated for a build of hours: over ${marks.largeFloat} min, half a shift.`,
  nobodyNamed: `${guide}, practice 3; ${pamphlet}, check 10: no task of a day or more without people; restated for a build of hours: ${marks.nobodyNamed} min or more.`,
  pathIndex: `${pamphlet}, checks 7 and 13: no float below nothing; (critical path + float) / critical path at least ${marks.pathIndex}.`,
  doneIndex: `${pamphlet}, check 14: tasks done / tasks that should be done at least ${marks.doneIndex}.`,
} as const;

/** Whether `found` of `of` is no more than the share `mark`: 2 of 40 is within 5 %, 3 of 40 is not. */
export function isWithin(found: number, of: number, mark: number): boolean {
  return found <= of * mark + 1e-9;
}

/** Check 13, DCMA-EA PAM 200.1: (length of the critical path + its float) / its length, all in minutes. */
export function pathIndex(minutes: number, float: number): number {
  return minutes > 0 ? (minutes + float) / minutes : 1;
}

/** Check 14, DCMA-EA PAM 200.1: tasks done / tasks that should be done by now; 1 when none should be. */
export function doneIndex(done: number, due: number): number {
  return due > 0 ? done / due : 1;
}
