import type { Pallet, Part, Truck } from '../../kit/kit.ts';
import type { Lot } from './needs.ts';
import { fitsAlone, floorOf, type PackedPallet, palletGroup, palletise } from './palletise.ts';

/** A packed truck. Kilograms and square metres of bed. */
export type PackedTruck = {
  /** All that is on it, on pallets or loose. */
  readonly parts: readonly { readonly part: string; readonly count: number }[];
  /** Names of the pallets on it. */
  readonly pallets: readonly string[];
  /** Of its parts; `loaded` is with the pallets themselves. */
  readonly kilograms: number;
  readonly loaded: number;
  readonly bed: number;
  /** First task that wants something from it; empty where none does. */
  readonly firstTask: string;
};

export type Packing = {
  /** In the order in which they are begun. */
  readonly pallets: readonly PackedPallet[];
  readonly trucks: readonly PackedTruck[];
  /** Parts that no truck takes: too heavy, too long, too wide or too high. */
  readonly tooBig: readonly string[];
};

type Loading = { counts: Map<Part, number>; kilograms: number; firstTask: string };

/**
 * Packs lots onto trucks in the order they are needed, so that what is needed first comes first: each part goes onto
 * the truck being packed while mass and bed allow, then onto the next. Like parts are stacked on each other up to the
 * truck's height and stacks stand beside each other; parts without a size take no bed. With a pallet, what fits on one
 * goes on pallets first, and those beside each other on the trucks.
 */
export function packTrucks(lots: readonly Lot[], truck: Truck, pallet?: Pallet): Packing {
  const loadings: Loading[] = [];
  const tooBig = new Set<string>();
  const palletised = pallet ? palletise(lots, pallet) : { pieces: lots, pallets: [] };
  for (const { task, parts } of palletised.pieces) {
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
  const packed = new Map(palletised.pallets.map((one) => [one.name, one]));
  const trucks = loadings.map(({ counts, kilograms, firstTask }): PackedTruck => {
    const pallets = [...counts.keys()].flatMap(({ name }) => packed.get(name) ?? []);
    const empty = pallets.reduce((sum, one) => sum + one.loaded - one.kilograms, 0);
    return {
      parts: allParts(counts, pallets),
      pallets: pallets.map(({ name }) => name),
      kilograms: kilograms - empty,
      loaded: kilograms,
      bed: bedOf(counts, truck),
      firstTask,
    };
  });
  return { pallets: palletised.pallets, trucks, tooBig: [...tooBig] };
}

/** What is loose and what is on the pallets, each part once. */
function allParts(
  counts: ReadonlyMap<Part, number>,
  pallets: readonly PackedPallet[],
): PackedTruck['parts'] {
  const sums = new Map<string, number>();
  const add = (part: string, count: number) => sums.set(part, (sums.get(part) ?? 0) + count);
  for (const [{ group, name }, count] of counts) {
    if (group !== palletGroup) add(name, count);
  }
  for (const { part, count } of pallets.flatMap(({ parts }) => parts)) add(part, count);
  return [...sums].map(([part, count]) => ({ part, count }));
}

function takes({ counts, kilograms }: Loading, part: Part, truck: Truck): boolean {
  const more = new Map(counts).set(part, (counts.get(part) ?? 0) + 1);
  return (
    kilograms + part.mass <= truck.mass &&
    bedOf(more, truck) <= truck.length * truck.width &&
    palletsStand(more, truck)
  );
}

/** Pallets stand on a grid, all one way: their area alone would promise places that are not there. */
function palletsStand(counts: ReadonlyMap<Part, number>, truck: Truck): boolean {
  const pallets = [...counts.keys()].filter(({ group }) => group === palletGroup);
  const size = pallets[0]?.size;
  if (!size) return true;
  const places = (along: number, across: number) =>
    Math.floor(truck.length / along + 1e-9) * Math.floor(truck.width / across + 1e-9);
  const { length, width } = size;
  return pallets.length <= Math.max(places(length, width), places(width, length));
}

function bedOf(counts: ReadonlyMap<Part, number>, truck: Truck): number {
  let bed = 0;
  for (const [part, count] of counts) {
    bed += floorOf(part, count, truck.height);
  }
  return bed;
}
