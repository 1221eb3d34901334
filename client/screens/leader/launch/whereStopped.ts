import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Stopped } from '#domain/bridge/statics/heldNow.ts';
import type { BuildState } from '#domain/progress/state.ts';

/** Where a launch stands by what was told. */
export type WhereStopped = Stopped & {
  /** A move is under way or stopped: how far it went is for somebody to measure. */
  readonly midway: boolean;
};

/**
 * The move that was begun last: done, all of it is gone; at work or stopped, nobody has told how far, and none of it is
 * taken. Null before the first.
 */
export function whereStopped(state: BuildState, bridge: Bridge): WhereStopped | null {
  const moves = state.work.tasks.flatMap(({ id, effect }) =>
    effect?.kind === 'move' ? [{ stage: effect.stage, status: state.tasks[id]?.status }] : [],
  );
  const begun = moves.filter(({ status }) => status !== undefined && status !== 'to-come');
  const last = begun.toSorted((a, b) => b.stage - a.stage)[0];
  const stage = last && bridge.stages.find((one) => one.stage === last.stage);
  if (!last || !stage) return null;
  const midway = last.status !== 'done';
  return { stage: stage.stage, into: midway ? 0 : stage.metres, midway };
}
