import type { Part, Truck } from '../../kit/kit.ts';
import type { Lot } from './needs.ts';

/** A packed truck. Kilograms and square metres of bed. */
export type PackedTruck = {
  readonly parts: readonly { readonly part: string; readonly count: number }[];
  readonly kilograms: number;
  readonly bed: number;
  /** First task that wants something from it; empty where none does. */
  readonly firstTask: string;
};

export type Packing = {
  readonly trucks: readonly PackedTruck[];
  /** Parts that no truck takes: too heavy, too long, too wide or too high. */
  readonly tooBig: readonly string[];
};

type Loading = { counts: Map<Part, number>; kilograms: number; firstTask: string };

/**
 * Packs lots onto trucks in the order they are needed, so that what is needed first comes first: each part goes onto
 * the truck being packed while mass and bed allow, then onto the next. Like parts are stacked on each other up to the
 * truck's height and stacks stand beside each other; parts without a size take no bed.
 */
export function packTrucks(lots: readonly Lot[], truck: Truck): Packing {
  const loadings: Loading[] = [];
  const tooBig = new Set<string>();
  for (const { task, parts } of lots) {
    for (const { part, count } of parts) {
      if (!fitsAlone(part, truck)) {
        tooBig.add(part.name);
        continue;
      }
      for (let one = 0; one < count; one += 1) {
        let last = loadings.at(-1);
        if (!last || !takes(last, part, truck)) {
          last = { counts: new Map(), kilograms: 0, firstTask: task };
          loadings.push(last);
        }
        last.counts.set(part, (last.counts.get(part) ?? 0) + 1);
        last.kilograms += part.mass;
      }
    }
  }
  const trucks = loadings.map(({ counts, kilograms, firstTask }) => ({
    parts: [...counts].map(([part, count]) => ({ part: part.name, count })),
    kilograms,
    bed: bedOf(counts, truck),
    firstTask,
  }));
  return { trucks, tooBig: [...tooBig] };
}

function takes({ counts, kilograms }: Loading, part: Part, truck: Truck): boolean {
  const more = new Map(counts).set(part, (counts.get(part) ?? 0) + 1);
  return kilograms + part.mass <= truck.mass && bedOf(more, truck) <= truck.length * truck.width;
}

function bedOf(counts: ReadonlyMap<Part, number>, truck: Truck): number {
  let bed = 0;
  for (const [{ size }, count] of counts) {
    if (size) {
      bed += Math.ceil(count / stacked(size.height, truck)) * size.length * size.width;
    }
  }
  return bed;
}

function stacked(height: number, truck: Truck): number {
  return Math.max(1, Math.floor(truck.height / height + 1e-9));
}

function fitsAlone({ mass, size }: Part, truck: Truck): boolean {
  const flat =
    !size ||
    (Math.max(size.length, size.width) <= truck.length &&
      Math.min(size.length, size.width) <= truck.width &&
      size.height <= truck.height);
  return mass <= truck.mass && flat;
}
