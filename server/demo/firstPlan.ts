import type { Command, CommandBody } from '#domain/progress/command.ts';
import { decide } from '#domain/progress/decide.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import { minutesAskedFor, workAsTold } from '#domain/progress/views/asTold.ts';
import { doubtsNow } from '#domain/progress/views/seenNow.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { Planner } from '../workers/planner.ts';

/** An order of work as it is planned for, with the nights at the site, and its plan. */
export type FirstPlan = { readonly work: Work; readonly plan: Plan };

/**
 * The first plan of a build, as its leader makes it from the order: for the light there is from the start on. `near` is a
 * plan whose orders it keeps where changing them does not gain enough. Throws when the order cannot be planned.
 */
export async function firstPlan(
  planner: Pick<Planner, 'plan'>,
  opening: CommandBody<'open-build'>,
  near: Plan | null,
): Promise<FirstPlan> {
  const state = justOpened(opening);
  const work = workAsTold(state);
  const planned = await planner.plan({
    work,
    past: { now: 0, tasks: [] },
    doubts: doubtsNow(state, 0, state.start),
    shape: 'pert',
    askedFor: minutesAskedFor(state),
    runs: 1,
    seed: 1,
    inForce: near && { work, plan: near },
  });
  if (!planned.ok) throw new Error(`demo: ${planned.reason.sentence}`);
  return { work, plan: planned.value.plan };
}

/** The order of work of a build that has just been opened, with the nights at the site. */
export function workWhenOpened(opening: CommandBody<'open-build'>): Work {
  return workAsTold(justOpened(opening));
}

function justOpened(opening: CommandBody<'open-build'>): BuildState {
  const command: Command = {
    id: 'demo',
    kind: 'open-build',
    body: opening,
    by: { role: 'leader', name: 'Leader' },
    happenedAt: opening.start,
    receivedAt: opening.start,
  };
  const decision = decide(emptyBuild, command);
  if (!decision.ok) throw new Error(`demo: ${decision.reason.sentence}`);
  return decision.value.reduce<BuildState>(
    (state, entry) => evolve(state, { ...entry, number: state.number + 1 }),
    emptyBuild,
  );
}
