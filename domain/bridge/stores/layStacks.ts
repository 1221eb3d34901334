import type { Part } from '../../kit/kit.ts';
import type { Lot } from './needs.ts';

/** A stack of one group of parts beside the bridge. Metres behind the front rollers. */
export type Stack = {
  readonly group: string;
  readonly side: 'left' | 'right';
  readonly from: number;
  readonly to: number;
  readonly kilograms: number;
  /** From its middle to the front rollers. */
  readonly walk: number;
};

/** Way along a side that is left free between two stacks. */
const lane = 1;

/** Depth of a stack away from the bridge, and its height: what people lift down without climbing. Common practice. */
const depth = 2.5;
const height = 1.5;

/**
 * Lays the stacks out behind the front rollers on both sides, what is needed first nearest to them, each on the side
 * that is shorter so far. `first` is where the first stack may begin. Parts without a size take a metre together.
 */
export function layStacks(lots: readonly Lot[], first: number): Stack[] {
  const groups = new Map<string, { kilograms: number; counts: Map<Part, number> }>();
  for (const { group, parts } of lots) {
    const all = groups.get(group) ?? { kilograms: 0, counts: new Map() };
    for (const { part, count } of parts) {
      all.counts.set(part, (all.counts.get(part) ?? 0) + count);
      all.kilograms += part.mass * count;
    }
    groups.set(group, all);
  }
  const ends = { left: first, right: first };
  return [...groups].map(([group, { counts, kilograms }]) => {
    const side = ends.left <= ends.right ? 'left' : 'right';
    const from = ends[side];
    const to = from + Math.max(1, floorOf(counts) / depth);
    ends[side] = to + lane;
    return { group, side, from, to, kilograms, walk: (from + to) / 2 };
  });
}

function floorOf(counts: ReadonlyMap<Part, number>): number {
  let area = 0;
  for (const [{ size }, count] of counts) {
    if (size) {
      const high = Math.max(1, Math.floor(height / size.height + 1e-9));
      area += Math.ceil(count / high) * size.length * size.width;
    }
  }
  return area;
}
