import { changedAsTold, minutesAskedFor, workAsTold } from '#domain/progress/views/asTold.ts';
import { pastOf } from '#domain/progress/views/past.ts';
import { doubtsNow } from '#domain/progress/views/seenNow.ts';
import { type Refusal, refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Change } from '#domain/tasks/change.ts';
import type { RefusalReply } from '#shared/wire.ts';
import type { JobOptions, Planner } from '../workers/planner.ts';
import type { SearchJob } from '../workers/searcher.ts';
import { seedOf } from './forecastJob.ts';
import { gainOf } from './gain.ts';
import type { LiveBuild } from './liveBuild.ts';
import type { KeptProposal } from './proposals.ts';

/** What a proposal is made for, and how its plan is found; without `find` the planner makes one in about a second. */
export type Wanted = {
  readonly id: string;
  readonly changes: readonly Change[];
  /** ISO 8601 UTC. */
  readonly now: string;
  readonly find?: ((job: Omit<SearchJob, 'seconds'>) => Promise<Result<Plan, Refusal>>) | undefined;
};

/** Plans what is still to come again, with changes, from now. Rejects with the signal's reason when stopped. */
export async function makeProposal(
  { live, planner, runs }: { live: LiveBuild; planner: Planner; runs: number },
  { id, changes, now, find }: Wanted,
  options: JobOptions,
): Promise<Result<KeptProposal, RefusalReply>> {
  const { state, build } = live;
  const asTold = workAsTold(state);
  const changed = changedAsTold(state, changes);
  if (!changed.ok) {
    const sentence = 'These changes do not fit the order of work. Mend what the faults name.';
    return bad({ ...refusal('work-faulty', sentence), faults: changed.reason });
  }
  const work = changed.value;
  const { plan: inForce, number: basis } = state;
  const accepted = inForce && { work: asTold, plan: inForce };
  const past = pastOf(state, now);
  const shape = inForce?.shape ?? 'pert';
  const found = await find?.({ work, past, shape, accepted: inForce });
  if (found && !found.ok) return found;
  const planned = await planner.plan(
    {
      work,
      past,
      doubts: doubtsNow({ ...state, work }, inForce?.minutesToOpen ?? 0, now),
      shape,
      askedFor: minutesAskedFor(state),
      runs,
      seed: seedOf(build),
      inForce: accepted,
      found: found?.value ?? null,
    },
    options,
  );
  if (!planned.ok) return planned;
  const { plan, forecast, before } = planned.value;
  const { gain, offer } = gainOf({ work, plan }, accepted, past, changes.length > 0);
  const shown = { proposal: id, basis, madeFor: now, plan, forecast, before, gain, offer };
  return good({ build, basis, work, plan, gain, shown });
}
