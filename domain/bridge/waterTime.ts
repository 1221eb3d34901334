import type { Ground } from './ground.ts';

/** Water that rises towards the level at which the work has to stop. */
export type WaterTime = {
  /** Metres still to rise; less than 0 is past it. */
  readonly metres: number;
  /** Minutes until then at the rise measured; 0 where it is reached, null where it does not rise. */
  readonly minutes: number | null;
};

/** How long the water leaves; null where level or limit is unknown, or the rise while it matters. */
export function waterTime({ water }: Ground): WaterTime | null {
  const { level = null, limit = null, rise } = water;
  if (level === null || limit === null) {
    return null;
  }
  const metres = limit - level;
  if (metres <= 0) {
    return { metres, minutes: 0 };
  }
  return rise === null ? null : { metres, minutes: rise > 0 ? (metres / rise) * 60 : null };
}
