/**
 * Every reason for which an ask, a tell or a request is refused. Codes are never reused;
 * the HTTP status of each stands in `shared/refusals.ts`.
 */
export const refusalCodes = [
  // identity, role and form
  'link-unknown',
  'link-withdrawn',
  'role-cannot',
  'not-your-crew',
  'form-wrong',
  'too-large',
  'too-many-requests',
  'id-used-otherwise',
  'build-unknown',
  'build-exists',
  'route-unknown',
  'task-unknown',
  'crew-unknown',
  'load-unknown',
  'entry-unknown',
  'kit-unknown',
  'kit-exists',
  // record
  'entry-not-a-tell',
  'halt-cannot-be-withdrawn',
  'near-miss-stays',
  'withdrawal-too-late',
  'already-withdrawn',
  'not-the-author',
  // asks
  'halt-on',
  'no-halt',
  'roll-call-open',
  'not-keep-off',
  'already-running',
  'order-not-met',
  'hold-open',
  'zone-occupied',
  'crew-not-off',
  'bank-not-clear',
  'not-a-hold',
  'hold-needs-inspection',
  'hold-already-passed',
  'values-missing',
  'value-outside-limit',
  'reason-missing',
  'concession-incomplete',
  'concession-not-higher',
  'concession-not-needed',
  'task-not-done',
  'nothing-to-settle',
  'work-has-begun',
  'plan-stale',
  'plan-does-not-fit',
  'proposal-unknown',
  // planning
  'bridge-impossible',
  'loop-in-order',
  'crew-too-small',
  'zone-too-small',
  'no-crew-can',
  'window-too-short',
  'too-many-tasks',
  'cannot-plan-yet',
  'work-faulty',
  'nothing-to-forecast',
  'fixed-blocked',
  'light-too-short',
  // the server itself
  'link-not-found',
  'feed-gone',
  'proposal-cancelled',
  'job-unknown',
  'job-cancelled',
  'storage-failed',
  'server-failed',
] as const;

export type RefusalCode = (typeof refusalCodes)[number];

/** An expected "no": a code for programs, a sentence that tells the person what to do, and what it concerns. */
export type Refusal = {
  readonly code: RefusalCode;
  readonly sentence: string;
  /** Ids of tasks, crews, zones, loads or fields concerned. */
  readonly of?: readonly string[];
};

export function refusal(code: RefusalCode, sentence: string, of?: readonly string[]): Refusal {
  return of ? { code, sentence, of } : { code, sentence };
}
