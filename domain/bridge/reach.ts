import type { Kit } from '../kit/kit.ts';
import type { Ground } from './ground.ts';

/** Tolerance on lengths, metres: a gap measured to the millimetre must not lose a bay to a rounding of sums. */
const hair = 1e-6;

/** Bridge length that the ground asks for: gap, setbacks and least bearings. Metres. */
export function lengthNeeded(ground: Ground, kit: Kit): number {
  return betweenBearings(ground) + kit.bearing.near + kit.bearing.far;
}

/** From bearing line to bearing line: the gap and the setbacks. Metres. */
export function betweenBearings(ground: Ground): number {
  return ground.gap + ground.near.setback + ground.far.setback;
}

/** Fewest whole bays that cover the length needed, and not fewer than the kit's least. */
export function baysNeeded(ground: Ground, kit: Kit): number {
  const bays = Math.ceil((lengthNeeded(ground, kit) - hair) / kit.bay.length);
  return Math.max(kit.bay.least, bays);
}

/** Load class that the kit gives a bridge of that length; null where it gives none. */
export function loadClassAt(kit: Kit, length: number): number | null {
  const row = kit.loadClasses.find(({ upTo }) => length <= upTo + hair);
  return row?.loadClass ?? null;
}

/** Longest bridge, in metres of whole bays, that carries the class; null where none does. */
export function longestFor(kit: Kit, loadClass: number): number | null {
  for (let bays = kit.bay.most; bays >= kit.bay.least; bays -= 1) {
    if ((loadClassAt(kit, bays * kit.bay.length) ?? 0) >= loadClass) {
      return bays * kit.bay.length;
    }
  }
  return null;
}
