import { type Refusal, refusal } from '../../refusal.ts';
import { bad, good, type Result } from '../../result.ts';
import type { Plan } from '../../schedule/plan.ts';
import { refuseFaultyWork } from '../../schedule/refuseFaultyWork.ts';
import type { Work } from '../../tasks/work.ts';
import type { CommandBody } from '../command.ts';
import type { Consequence } from '../entry.ts';
import { wasTold } from '../standing.ts';
import type { BuildState } from '../state.ts';

/** Opens the record, once. */
export function decideOpening(
  state: BuildState,
  { work }: CommandBody<'open-build'>,
): Result<Consequence, Refusal> {
  if (state.number > 0)
    return bad(refusal('build-exists', 'This build is open already: start another one.'));
  return soundOrEmpty(work);
}

/** Another bridge, as long as nothing was told of the work for the one before. */
export function decideBridge(
  state: BuildState,
  { work }: CommandBody<'choose-bridge'>,
): Result<Consequence, Refusal> {
  const begun = Object.entries(state.tasks).find(([, task]) => wasTold(task));
  if (begun) {
    const sentence = 'Work has begun on this bridge: open another build for another bridge.';
    return bad(refusal('work-has-begun', sentence, [begun[0]]));
  }
  return soundOrEmpty(work);
}

/** A build may be opened before its order of work is known. */
function soundOrEmpty(work: Work): Result<Consequence, Refusal> {
  const faulty = work.tasks.length > 0 ? refuseFaultyWork(work) : null;
  return faulty ? bad(faulty) : good({});
}

/** Accepts a plan that was made on the work as it stands and that fits the work it comes with. */
export function decidePlan(
  state: BuildState,
  { work, plan, basis }: CommandBody<'accept-plan'>,
): Result<Consequence, Refusal> {
  if (basis < state.workNumber) {
    const sentence = 'Work, crews or stores have changed since this plan was made: plan again.';
    return bad(refusal('plan-stale', sentence));
  }
  const faulty = refuseFaultyWork(work);
  if (faulty) return bad(faulty);
  const misfits = [...misfit(work, plan), ...vanished(state, work)];
  if (misfits.length === 0) return good({});
  const sentence = 'This plan does not fit the order of work: plan again.';
  return bad(refusal('plan-does-not-fit', sentence, [...new Set(misfits)]));
}

/** Tasks, crews and hand-overs in which plan and work differ. */
function misfit(work: Work, plan: Plan): string[] {
  const ids = new Set(work.tasks.map(({ id }) => id));
  const crews = new Set(work.crews.map(({ id }) => id));
  const planned = new Set<string>();
  const wrong: string[] = [];
  for (const { task, start, finish, crews: given } of plan.tasks) {
    const inOrder = Number.isFinite(start) && Number.isFinite(finish) && start <= finish;
    if (!ids.has(task) || planned.has(task) || !inOrder) wrong.push(task);
    planned.add(task);
    if (crews.size > 0) wrong.push(...given.map(({ crew }) => crew).filter((id) => !crews.has(id)));
  }
  wrong.push(...[...ids].filter((id) => !planned.has(id)));
  const ends = plan.handOvers.flatMap(({ from, to }) => [from, to]);
  wrong.push(...[...ends, plan.opening].filter((id) => !ids.has(id)));
  return wrong;
}

/** Tasks of which something was told never go out of the order of work. */
function vanished(state: BuildState, work: Work): string[] {
  const ids = new Set(work.tasks.map(({ id }) => id));
  return Object.entries(state.tasks)
    .filter(([id, task]) => !ids.has(id) && wasTold(task))
    .map(([id]) => id);
}
