import type { LaunchRules } from '../../kit/kit.ts';
import type { Girder } from '../balance.ts';
import type { Stage } from '../bridge.ts';
import { drillApproach } from './drillApproach.ts';
import { freeApproach } from './freeApproach.ts';
import { onceLanded } from './onceLanded.ts';
import { toLanding } from './toLanding.ts';

/** The girder to push out, and how far. Metres ahead of the front rollers. */
export type Launch = {
  readonly girder: Girder;
  readonly bays: number;
  /** Where the tip meets the landing rollers. */
  readonly landsAt: number;
  /** Where the tip would be once bay 1 rests on the far bearing. */
  readonly final: number;
  /** Metres behind the front rollers that the girder may take; null where nobody has measured. */
  readonly room: number | null;
};

/** The stages of a launch, or which limit binds. */
export type Launched =
  | { readonly ok: true; readonly stages: Stage[] }
  | { readonly ok: false; readonly binds: Binding };

/** The balance as the tip lands, the balance over the far rollers after that, or the room behind. */
export type Binding = 'balance' | 'far-balance' | 'room';

/** Tolerance on the room, metres: stages are rounded to a tenth of a millimetre. */
const slack = 1e-3;

/**
 * The stages of a launch, from the balance of moments (`balanceBehind`): the kit's own drill (`drillApproach`) where
 * it has one that fits into the room, otherwise the order with the fewest moves that does (`freeApproach`); then to
 * the far rollers (`toLanding`), and off with the nose (`onceLanded`). Refuses with what binds.
 */
export function launchStages(launch: Launch, rules: LaunchRules): Launched {
  const { room } = launch;
  let binds: Binding = 'room';
  for (const approach of approaches(launch, rules)) {
    const landing = toLanding(launch, rules, approach);
    if (landing === null) {
      binds = 'balance';
      continue;
    }
    const landed = [...approach, ...landing];
    if (room === null || tailRoom(launch.girder, landed) <= room + slack) {
      const rest = onceLanded(launch, rules, landed);
      return rest
        ? { ok: true, stages: [...landed, ...rest] }
        : { ok: false, binds: 'far-balance' };
    }
  }
  return { ok: false, binds };
}

function* approaches(launch: Launch, rules: LaunchRules): Generator<Stage[]> {
  if (rules.lot !== undefined) {
    yield drillApproach(launch, rules, rules.lot);
  }
  // A kit without a drill builds in what room there is; unmeasured, in all that it could use.
  const all = launch.girder.noseLength + launch.bays * launch.girder.bayLength;
  if (rules.lot === undefined || launch.room !== null) {
    const free = freeApproach(launch, rules, launch.room ?? all);
    if (free) {
      yield free;
    }
  }
}

/** How far the tail reaches behind the front rollers at the worst, before any move. Metres. */
export function tailRoom(girder: Girder, stages: readonly Stage[]): number {
  let moved = 0;
  let room = 0;
  for (const { bays, moved: after } of stages) {
    room = Math.max(room, girder.noseLength + bays * girder.bayLength - moved);
    moved = after;
  }
  return room;
}
