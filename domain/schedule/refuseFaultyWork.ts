import type { Fault } from '../fault.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { loopSentence, mostTasks, workFaults } from '../tasks/checkWork.ts';
import { findLoop } from '../tasks/graph.ts';
import type { Work } from '../tasks/work.ts';

/** Why no schedule can be made of this order of work whatever the crews, or null when one can. */
export function refuseFaultyWork(work: Work): Refusal | null {
  if (work.tasks.length === 0) {
    return refusal('cannot-plan-yet', 'There is nothing to plan: give at least one task.');
  }
  if (work.tasks.length > mostTasks) {
    const sentence = `The order of work has ${work.tasks.length} tasks: split it, at most ${mostTasks} can be planned at once.`;
    return refusal('too-many-tasks', sentence);
  }
  const faults = workFaults(work);
  const first = faults[0];
  if (!first) {
    return null;
  }
  const loop = first.path === '/links' ? findLoop(work) : null;
  if (loop) {
    const sentence = `The order of work has a loop: ${loopSentence(loop)}. Take one of these links out.`;
    return refusal('loop-in-order', sentence, loop);
  }
  return refusal('work-faulty', faultySentence(first, faults.length - 1));
}

function faultySentence(first: Fault, others: number): string {
  const more = others > 0 ? ` (and ${others} more)` : '';
  return `Mend the order of work at ${first.path}: found ${first.found}, expected ${first.expected}${more}.`;
}
