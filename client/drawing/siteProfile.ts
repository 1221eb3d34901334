import type { Bridge } from '#domain/bridge/bridge.ts';
import type { BankGround, Ground } from '#domain/bridge/ground.ts';

/** A point of the side view in metres: x ahead of the front rollers, y above the near bank. */
export type Point = { readonly x: number; readonly y: number };

/** Both banks, the bed and the water of a site from the side. */
export type SiteProfile = {
  /** Edges of the banks. */
  readonly near: Point;
  readonly far: Point;
  /** Profile of the banks and the bed from edge to edge, near to far. */
  readonly profile: readonly Point[];
  /** Level of the water; null where the bed is dry. */
  readonly water: number | null;
  /** Where the water stands, dry or not. */
  readonly surface: number;
  readonly bed: number;
  /** The water's depth was never measured: it is drawn, and said to be a guess. */
  readonly depthKnown: boolean;
  readonly heightsKnown: boolean;
};

const guessedHeight = 4;
const guessedDepth = 1.5;

/** The site from the side, from what was measured; what was not is drawn as a guess and said to be one. */
export function siteProfile(
  ground: Ground | null,
  bridge: Pick<Bridge, 'gap' | 'landsAt'>,
): SiteProfile {
  const gap = ground?.gap ?? bridge.gap;
  const setbacks = { near: ground?.near.setback ?? 0, far: ground?.far.setback ?? 0 };
  // What is left between the landing roller and the bearings is shared by the rollers of both banks.
  const spare = Math.max(0, (bridge.landsAt - gap - setbacks.near - setbacks.far) / 2);
  const nearX = setbacks.near + spare;
  const heights = { near: ground?.near.height ?? null, far: ground?.far.height ?? null };
  const nearHeight = heights.near ?? heights.far ?? guessedHeight;
  const farHeight = heights.far ?? nearHeight;
  const near = { x: nearX, y: 0 };
  const far = { x: nearX + gap, y: farHeight - nearHeight };
  const surface = -nearHeight;
  const depthMeasured = ground?.water.depth ?? null;
  const depth = depthMeasured ?? guessedDepth;
  const bed = surface - depth;

  const nearFoot = near.x + faceOf(ground?.near, nearHeight, gap);
  const farFoot = far.x - faceOf(ground?.far, farHeight, gap);
  const under = Math.min(depth * 1.6, (farFoot - nearFoot) / 4);
  return {
    near,
    far,
    profile: [
      near,
      { x: nearFoot, y: surface },
      { x: nearFoot + under, y: bed },
      { x: farFoot - under, y: bed },
      { x: farFoot, y: surface },
      far,
    ],
    water: depth > 0 ? surface : null,
    surface,
    bed,
    depthKnown: depthMeasured !== null,
    heightsKnown: heights.near !== null && heights.far !== null,
  };
}

/** Metres that the face of a bank takes from edge to foot. Unmeasured: upright where made, a usual slope where not. */
function faceOf(bank: BankGround | undefined, height: number, gap: number): number {
  const slope = bank?.slope ?? null;
  if (slope !== null) {
    const run = slope >= 90 ? 0 : height / Math.tan((slope * Math.PI) / 180);
    // Two flat faces may meet under the gap, and do not cross.
    return Math.min(run, gap * 0.45);
  }
  return bank?.kind === 'made' ? 0 : Math.min(0.7 * height, gap * 0.3);
}
