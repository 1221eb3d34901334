import type { Bridge } from '../../bridge/bridge.ts';
import type { SpanBay, SpanNose } from '../span.ts';

/**
 * Metres that the centre of gravity lies behind the front rollers, of what stands by now: the sum of mass times
 * distance over the sum of masses (statics, any textbook). Negative: ahead of them, it tips. A bay counts by the share
 * of its pieces that are done, each of them at the middle of the bay. Null for a floated bridge, and while nothing
 * stands.
 */
export function balanceOf(
  bridge: Bridge | null,
  nose: readonly SpanNose[],
  bays: readonly SpanBay[],
  moved: number,
): number | null {
  const first = bridge?.stages[0];
  if (bridge?.manner !== 'launched' || !first) return null;
  const tip = first.tip - first.moved + moved;
  const noseEach = bridge.nose > 0 ? bridge.noseLength / bridge.nose : 0;
  const standing = [
    ...nose
      .filter(({ whole, off }) => whole === 'done' && !off)
      .map(({ section }) => ({
        mass: bridge.masses.nose,
        behind: (section - 0.5) * noseEach - tip,
      })),
    ...bays.map(({ bay, pieces, deck }) => ({
      mass:
        bridge.masses.bay * doneShare(pieces) + (deck?.status === 'done' ? bridge.masses.deck : 0),
      behind: bridge.noseLength + (bay - 0.5) * bridge.bayLength - tip,
    })),
  ];
  const mass = standing.reduce((sum, part) => sum + part.mass, 0);
  const moment = standing.reduce((sum, part) => sum + part.mass * part.behind, 0);
  return mass > 0 ? moment / mass : null;
}

function doneShare(pieces: SpanBay['pieces']): number {
  if (pieces.length === 0) return 0;
  return pieces.filter(({ status }) => status === 'done').length / pieces.length;
}
