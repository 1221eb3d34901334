import type { Bridge } from '#domain/bridge/bridge.ts';

/** Nobody gave the height of girder or rollers: these are drawn, metres, and never measured from the drawing. */
export const rollerHeight = 0.6;

export function girderDepth({ bayLength }: Pick<Bridge, 'bayLength'>): number {
  return Math.min(2, Math.max(1.2, bayLength / 2));
}
