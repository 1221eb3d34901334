import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Span } from '#domain/progress/span.ts';
import { girderDepth, rollerHeight } from './girderDrawn.ts';
import { type Point, type SiteProfile, siteProfile } from './siteProfile.ts';

/** From rear to front, along the bridge. */
export type Stretch = { readonly from: number; readonly to: number };

/** The side view of a site and its bridge, in metres, before anything is drawn. */
export type SpanGeometry = SiteProfile & {
  readonly bays: readonly (Stretch & { readonly bay: number })[];
  readonly nose: readonly (Stretch & { readonly section: number })[];
  /** Tip of the bridge as it stands, with what is left of the nose. */
  readonly tip: number;
  readonly tail: number;
  readonly rollers: { readonly front: number; readonly rear: number; readonly far: number };
  /** Height of the lower edge of the bridge at some x. */
  readonly bottom: (x: number) => number;
  readonly depth: number;
  readonly from: number;
  readonly to: number;
  readonly lowest: number;
  readonly highest: number;
};

/** How far a tip hangs in the drawing, metres: enough to be seen, not a calculation. */
const sag = 0.5;
/** Metres of bank shown behind the tail, where the vehicle that pushes stands, and beyond the landing. */
const room = { wide: 9, narrow: 6 };

/** Where everything of the side view lies, from what was measured, what was designed and how far it has moved. */
export function spanGeometry(
  ground: Ground | null,
  bridge: Bridge,
  span: Span,
  wide = true,
): SpanGeometry {
  const site = siteProfile(ground, bridge);
  const { near, far, surface, bed } = site;

  const tipAtStart = bridge.stages[0] ? bridge.stages[0].tip - bridge.stages[0].moved : 0;
  const ahead = tipAtStart + span.moved;
  const front = ahead - bridge.noseLength;
  const sectionLength = bridge.nose > 0 ? bridge.noseLength / bridge.nose : 0;
  const nose = span.nose
    .filter(({ off }) => !off)
    .map(({ section }) => ({
      section,
      from: ahead - section * sectionLength,
      to: ahead - (section - 1) * sectionLength,
    }));
  const bays = Array.from({ length: bridge.bays }, (_, index) => ({
    bay: index + 1,
    from: front - (index + 1) * bridge.bayLength,
    to: front - index * bridge.bayLength,
  }));
  const tip = Math.max(front, ...nose.map(({ to }) => to));
  const tail = front - bridge.bays * bridge.bayLength;
  const rollers = { front: 0, rear: -1.5 * bridge.bayLength, far: bridge.landsAt };

  const girder = girderDepth(bridge);
  const from = Math.min(tail, rollers.rear) - (wide ? room.wide : room.narrow);
  const to = Math.max(tip, bridge.landsAt, far.x) + (wide ? room.wide : room.narrow);
  return {
    ...site,
    bays,
    nose,
    tip,
    tail,
    rollers,
    bottom: bottomLine(bridge, span, { near, far, surface }),
    depth: girder,
    from,
    to,
    lowest: bed,
    highest: Math.max(0, far.y) + rollerHeight + girder,
  };
}

function bottomLine(
  bridge: Bridge,
  span: Span,
  { near, far, surface }: { near: Point; far: Point; surface: number },
): (x: number) => number {
  if (bridge.manner === 'floated') {
    return (x) => (x <= near.x ? rollerHeight : Math.min(rollerHeight, surface + 0.8));
  }
  const nearY = span.seated.near ? 0 : rollerHeight;
  const farY = far.y + (span.seated.far ? 0 : rollerHeight);
  if (span.landed || span.seated.near || span.seated.far) {
    return (x) => {
      const along = x / Math.max(1, bridge.landsAt);
      return nearY + (farY - nearY) * Math.min(1, Math.max(0, along));
    };
  }
  // A cantilever droops as the square of how far it reaches: enough to be seen, not a calculation.
  return (x) => nearY - (x > 0 ? sag * (x / bridge.landsAt) ** 2 : 0);
}
