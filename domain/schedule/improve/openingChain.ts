import type { Work } from '../../tasks/work.ts';
import type { Plan, PlannedTask } from '../plan.ts';
import { reasonSentence } from '../reasonSentence.ts';

/** One task of the chain, with why it cannot start earlier as the end of a sentence. */
export type ChainStep = { readonly planned: PlannedTask; readonly why: string };

/**
 * The chain that sets the opening, from the start to the task that opens: each task waits for the one before it, through
 * a link, people of a crew or room in a zone.
 */
export function openingChain(plan: Plan, work: Work): ChainStep[] {
  const byId = new Map(plan.tasks.map((own) => [own.task, own]));
  const chain: ChainStep[] = [];
  let at = byId.get(plan.opening);
  while (at && chain.length < plan.tasks.length) {
    chain.push({ planned: at, why: reasonSentence(work, at.reason) });
    at = at.reason.task === undefined ? undefined : byId.get(at.reason.task);
  }
  return chain.reverse();
}
