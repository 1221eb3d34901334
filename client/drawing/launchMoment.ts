import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { type HeldNow, heldNow, type Stopped } from '#domain/bridge/statics/heldNow.ts';
import { bodyAt } from '#domain/bridge/statics/stageStatics.ts';
import type { Kit } from '#domain/kit/kit.ts';

/** A bridge and what it is launched by, over which ground. */
export type Launching = {
  readonly bridge: Bridge;
  readonly kit: Kit;
  readonly ground: Ground | null;
};

/** A piece of the bridge, metres ahead of the front rollers. */
type Piece = { readonly from: number; readonly to: number };

/** A launch at one moment: where every piece lies and what holds it. Metres ahead of the front rollers. */
export type LaunchMoment = {
  readonly held: HeldNow;
  readonly bays: readonly (Piece & {
    /** 1 leads. */
    readonly bay: number;
    readonly decked: boolean;
    /** Built, or decked, for this stage and not before. */
    readonly fresh: boolean;
    readonly freshDeck: boolean;
  })[];
  readonly nose: readonly (Piece & { readonly section: number })[];
  /** The foremost end that is on. */
  readonly front: number;
  /** Weights on the tail, kilograms. */
  readonly counterweight: number;
};

/** The launch so many metres into the move of a stage; null for a floated bridge and a stage that there is not. */
export function launchMoment(launching: Launching, stopped: Stopped): LaunchMoment | null {
  const { bridge, kit, ground } = launching;
  const held = heldNow(bridge, kit, stopped, ground?.rollerFall ?? 0);
  if (!held) return null;
  const row = stopped.stage - 1;
  const body = bodyAt(bridge, row);
  const before = bridge.stages[row - 1];
  const tip = held.moved;
  const section = bridge.nose > 0 ? bridge.noseLength / bridge.nose : 0;
  const nose = Array.from({ length: bridge.nose - body.sectionsOff }, (_, at) => {
    const number = body.sectionsOff + at + 1;
    const to = tip - (number - 1) * section;
    return { section: number, from: to - section, to };
  });
  const head = tip - bridge.noseLength;
  const bays = Array.from({ length: body.bays }, (_, at) => {
    const bay = at + 1;
    const decked = body.decked.includes(bay);
    return {
      bay,
      from: head - bay * bridge.bayLength,
      to: head - at * bridge.bayLength,
      decked,
      fresh: bay > (before?.bays ?? 0),
      freshDeck: decked && !(before?.decked.includes(bay) ?? false),
    };
  });
  const front = nose[0]?.to ?? head;
  return { held, bays, nose, front, counterweight: body.counterweight };
}

/** From where to where the ground has to be drawn for all moves of a launch, metres ahead of the front rollers. */
export function launchReach({ bridge, kit, ground }: Launching): Piece {
  const tails = bridge.stages.map(
    ({ bays, tip, metres }) => tip - metres - bridge.noseLength - bays * bridge.bayLength,
  );
  const fronts = bridge.stages.map(({ tip }, row) => {
    const section = bridge.nose > 0 ? bridge.noseLength / bridge.nose : 0;
    return tip - bodyAt(bridge, row).sectionsOff * section;
  });
  const vehicle = kit.launch?.vehicleRoom ?? 0;
  const behind = ground?.roomBehind ?? 0;
  return {
    from: Math.min(...tails.map((tail) => tail - vehicle), -behind, -bridge.bayLength) - 2,
    to: Math.max(...fronts, bridge.landsAt) + 4,
  };
}
