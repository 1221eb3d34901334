import { minutesAskedFor, workAsTold } from '#domain/progress/views/asTold.ts';
import { pastOf } from '#domain/progress/views/past.ts';
import { doubtsNow } from '#domain/progress/views/seenNow.ts';
import { refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { Change } from '#domain/tasks/change.ts';
import { applyChanges } from '#domain/tasks/change.ts';
import type { Proposal, RefusalReply } from '#shared/wire.ts';
import type { JobOptions, Planner } from '../workers/planner.ts';
import { seedOf } from './forecastJob.ts';
import { gainSentence } from './gain.ts';
import type { LiveBuild } from './liveBuild.ts';
import type { KeptProposal } from './proposals.ts';

/** Plans what is still to come again, with changes, from now. Rejects with the signal's reason when stopped. */
export async function makeProposal(
  { live, planner, runs }: { live: LiveBuild; planner: Planner; runs: number },
  { id, changes, now }: { id: string; changes: readonly Change[]; now: string },
  options: JobOptions,
): Promise<Result<{ readonly kept: KeptProposal; readonly shown: Proposal }, RefusalReply>> {
  const { state, build } = live;
  const asTold = workAsTold(state);
  const work = applyChanges(asTold, changes);
  if (!work.ok) {
    const sentence = 'These changes do not fit the order of work. Mend what the faults name.';
    return bad({ ...refusal('work-faulty', sentence), faults: work.reason });
  }
  const { plan: inForce, number: basis } = state;
  const planned = await planner.plan(
    {
      work: work.value,
      past: pastOf(state, now),
      doubts: doubtsNow({ ...state, work: work.value }, inForce?.minutesToOpen ?? 0, now),
      shape: inForce?.shape ?? 'pert',
      askedFor: minutesAskedFor(state),
      runs,
      seed: seedOf(build),
      inForce: inForce && { work: asTold, plan: inForce },
    },
    options,
  );
  if (!planned.ok) return planned;
  const { plan, forecast, before } = planned.value;
  const gain = gainSentence(
    { plan, forecast },
    inForce && before && { plan: inForce, forecast: before.forecast },
  );
  return good({
    kept: { build, basis, work: work.value, plan, gain },
    shown: { proposal: id, basis, plan, forecast, before, gain },
  });
}
