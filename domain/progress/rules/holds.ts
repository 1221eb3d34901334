import { type Refusal, refusal } from '../../refusal.ts';
import { bad, good, type Result } from '../../result.ts';
import type { Command } from '../command.ts';
import type { Consequence } from '../entry.ts';
import { checkedBy, orderIndex } from '../orderIndex.ts';
import type { BuildState } from '../state.ts';
import { plainName, taskLabel } from '../words.ts';
import { everythingBefore } from './before.ts';
import { judgeValues } from './holdValues.ts';
import { comesBack } from './redo.ts';

/**
 * Passes a hold when all before it is done, earlier holds are passed, and every value is given and may stand: see
 * `judgeValues`.
 */
export function decidePass(
  state: BuildState,
  command: Extract<Command, { kind: 'pass-hold' }>,
  happenedAt: string,
): Result<Consequence, Refusal> {
  const { task, name } = command.body;
  const label = taskLabel(state, task);
  const hold = orderIndex(state.work).task.get(task)?.hold;
  if (!hold) return bad(notAHold(label, task));
  if (state.halt)
    return bad(refusal('halt-on', 'A halt is on: wait until the leader has lifted it.'));
  if (state.tasks[task]?.hold === 'passed')
    return bad(
      refusal('hold-already-passed', `${label} is passed already: nothing to do.`, [task]),
    );
  const open = everythingBefore(state, task, happenedAt).filter(({ met }) => !met);
  const first = open.find(({ kind }) => kind !== 'hold') ?? open[0];
  if (first) {
    const alike = open.filter(({ kind }) => (kind === 'hold') === (first.kind === 'hold'));
    const code = first.kind === 'hold' ? 'hold-open' : 'order-not-met';
    const sentence = alike.map((each) => each.sentence).join(' ');
    return bad(
      refusal(
        code,
        sentence,
        alike.map(({ of }) => of),
      ),
    );
  }
  const judged = judgeValues(state, hold, command);
  if (!judged.ok) return judged;
  const ownWork = isOwnWork(state, task, name) || isOwnWork(state, task, command.by.name);
  return good({ ...(ownWork ? { ownWork } : {}), ...judged.value });
}

/** A hold that fails is a fact: its redo list comes back, and what was started on an earlier pass is flagged. */
export function decideFailure(state: BuildState, task: string): Result<Consequence, Refusal> {
  const hold = orderIndex(state.work).task.get(task)?.hold;
  if (!hold) return bad(notAHold(taskLabel(state, task), task));
  const redo = hold.redo.filter((id) => id !== task);
  return good(comesBack(state, redo, state.tasks[task]?.hold === 'passed' ? [task] : []));
}

function notAHold(label: string, task: string): Refusal {
  return refusal('not-a-hold', `${label} is no hold point: choose one of the hold points.`, [task]);
}

/** Whether somebody would inspect what they built: they told work on the tasks that a hold looks at, or lead the crew. */
export function isOwnWork(state: BuildState, hold: string, name: string): boolean {
  return plainName(name) !== '' && builders(state, hold).has(plainName(name));
}

/** Names of those who told work, or lead a crew that did, on the tasks that a hold looks at. */
function builders(state: BuildState, hold: string): Set<string> {
  const names = [...checkedBy(state.work, hold)].flatMap((id) =>
    (state.tasks[id]?.tells ?? []).flatMap(({ crew, by, saidBy }) => {
      const chief = state.work.crews.find((each) => each.id === crew)?.chief;
      return [saidBy ?? by.name, ...(chief ? [chief] : [])];
    }),
  );
  return new Set(names.map(plainName));
}
