import { type Refusal, refusal } from '../../refusal.ts';
import { bad, good, type Result } from '../../result.ts';
import type { CommandBody } from '../command.ts';
import type { Consequence } from '../entry.ts';
import { orderIndex, waitingOn } from '../orderIndex.ts';
import type { BuildState } from '../state.ts';
import { statusWords, taskLabel } from '../words.ts';
import { lapsedByRedo } from './lapses.ts';

/** The leader finds finished work wrong: it comes back, with those of `also` that are done too. */
export function decideReopening(
  state: BuildState,
  { task, also }: CommandBody<'reopen-task'>,
): Result<Consequence, Refusal> {
  const unknown = also.find((id) => !state.tasks[id]);
  if (unknown !== undefined)
    return bad(
      refusal('task-unknown', `There is no task ${unknown} in this build: check its id.`, [
        unknown,
      ]),
    );
  const { status } = state.tasks[task]!;
  if (status !== 'done') {
    const sentence = `${taskLabel(state, task)} is ${statusWords[status]}: only finished work comes back. Tell it stopped instead.`;
    return bad(refusal('task-not-done', sentence, [task]));
  }
  return good(comesBack(state, [task, ...also]));
}

/**
 * What happens when finished work comes back: new attempts, passes that rested on it, tasks started on its strength.
 * `failed` are holds that no longer count as passed either, without coming back by this.
 */
export function comesBack(
  state: BuildState,
  tasks: readonly string[],
  failed: readonly string[] = [],
): Consequence {
  const done = [...new Set(tasks)].filter((id) => state.tasks[id]?.status === 'done');
  return {
    ...(done.length > 0
      ? { redo: done.map((task) => ({ task, attempt: state.tasks[task]!.attempt + 1 })) }
      : {}),
    ...undone(state, [...done, ...failed]),
  };
}

/** Passes that lapse and tasks that are flagged when `tasks` no longer count as done. */
export function undone(
  state: BuildState,
  tasks: readonly string[],
): Pick<Consequence, 'lapsed' | 'flagged'> {
  const lapsed = lapsedByRedo(state, tasks);
  const flagged = startedOn(state, tasks);
  return {
    ...(lapsed.length > 0 ? { lapsed } : {}),
    ...(flagged.length > 0 ? { flagged } : {}),
  };
}

/**
 * Tasks started on the strength of others: those right after them, done or not, and those further on that are under
 * way now. What is long done further on rests on work that was looked at since.
 */
function startedOn(state: BuildState, tasks: readonly string[]): string[] {
  const { after, task: known } = orderIndex(state.work);
  const next = tasks.flatMap((id) => (after.get(id) ?? []).map(({ to }) => to));
  const later = tasks.flatMap((id) => [...waitingOn(state.work, id)]);
  const underWay = later.filter((id) => {
    const status = state.tasks[id]?.status;
    return status === 'at-work' || status === 'stopped';
  });
  const started = next.filter((id) => state.tasks[id]?.status !== 'to-come');
  return [...new Set([...started, ...underWay])].filter(
    (id) => !tasks.includes(id) && !known.get(id)?.hold,
  );
}
