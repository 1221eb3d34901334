import { type Refusal, type RefusalCode, refusal } from '../../refusal.ts';
import { bad, good, type Result } from '../../result.ts';
import type { Consequence } from '../entry.ts';
import { orderIndex } from '../orderIndex.ts';
import { isAtWork } from '../standing.ts';
import type { BuildState } from '../state.ts';
import { type KeepOffCondition, keepOffCheck } from '../views/keepOff.ts';
import { taskLabel } from '../words.ts';
import { lapsedByWork } from './lapses.ts';

const codes: Readonly<Record<KeepOffCondition['kind'], RefusalCode>> = {
  halt: 'halt-on',
  order: 'order-not-met',
  hold: 'hold-open',
  zone: 'zone-occupied',
  off: 'crew-not-off',
  clear: 'bank-not-clear',
};

/**
 * Grants the start of a keep-off task, or says what is missing: the halt first, then order, holds, zones, head counts
 * and banks. Going on with one that was stopped is the same ask again.
 */
export function decideKeepOffStart(
  state: BuildState,
  task: string,
  happenedAt: string,
): Result<Consequence, Refusal> {
  const label = taskLabel(state, task);
  const unmet = keepOffCheck(state, task, happenedAt).filter(({ met }) => !met);
  const halted = unmet.find(({ kind }) => kind === 'halt');
  if (halted) return bad(refusal('halt-on', halted.sentence));
  if (!orderIndex(state.work).task.get(task)?.keepOff)
    return bad(
      refusal('not-keep-off', `${label} is no keep-off task: just tell it started.`, [task]),
    );
  const standing = state.tasks[task]!;
  if (isAtWork(standing))
    return bad(refusal('already-running', `${label} is running already.`, [task]));
  if (standing.status === 'done')
    return bad(refusal('already-running', `${label} is done already: nothing to start.`, [task]));
  const first = unmet[0];
  if (first) {
    const alike = unmet.filter(({ kind }) => kind === first.kind);
    const sentence = alike.map((each) => each.sentence).join(' ');
    return bad(
      refusal(
        codes[first.kind],
        sentence,
        alike.map(({ of }) => of),
      ),
    );
  }
  const lapsed = lapsedByWork(state, task, false);
  return good(lapsed.length > 0 ? { lapsed } : {});
}
