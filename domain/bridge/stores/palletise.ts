import type { Pallet, Part, Truck } from '../../kit/kit.ts';
import type { Lot } from './needs.ts';

/** A packed pallet. Kilograms of what is on it, `loaded` with its own; `bed` is square metres of it that are taken. */
export type PackedPallet = {
  readonly name: string;
  readonly parts: readonly { readonly part: string; readonly count: number }[];
  readonly kilograms: number;
  readonly loaded: number;
  readonly bed: number;
  /** First task that wants something from it; empty where none does. */
  readonly firstTask: string;
};

/** The group of a pallet among the parts of a truck: no id of a kit can be this. */
export const palletGroup = 'on a pallet';

type Open = { counts: Map<Part, number>; kilograms: number; task: string; at: number };

/**
 * Puts what fits on pallets, in the order needed: each part on the pallet being loaded while mass and bed allow, then on
 * the next. What comes back are the pallets, and the pieces that trucks take: pallets and what is too big for one, each
 * where the first of it is needed.
 */
export function palletise(
  lots: readonly Lot[],
  pallet: Pallet,
): { readonly pieces: Lot[]; readonly pallets: PackedPallet[] } {
  const loose: { readonly lot: Lot; readonly at: number }[] = [];
  const opened: Open[] = [];
  for (const [at, lot] of lots.entries()) {
    for (const { part, count } of lot.parts) {
      if (!fitsAlone(part, pallet)) {
        loose.push({ lot: { ...lot, parts: [{ part, count }] }, at });
        continue;
      }
      for (let one = 0; one < count; one += 1) {
        let last = opened.at(-1);
        if (!last || !takes(last, part, pallet)) {
          last = { counts: new Map(), kilograms: 0, task: lot.task, at };
          opened.push(last);
        }
        last.counts.set(part, (last.counts.get(part) ?? 0) + 1);
        last.kilograms += part.mass;
      }
    }
  }
  const pallets = opened.map(({ counts, kilograms, task }, row) => ({
    name: `Pallet ${row + 1}`,
    parts: [...counts].map(([part, count]) => ({ part: part.name, count })),
    kilograms,
    loaded: pallet.empty + kilograms,
    bed: bedOf(counts, pallet),
    firstTask: task,
  }));
  const pieces = [
    ...loose,
    ...pallets.map((packed, row) => ({ lot: asLot(packed, pallet), at: opened[row]?.at ?? 0 })),
  ];
  return { pieces: pieces.sort((a, b) => a.at - b.at).map(({ lot }) => lot), pallets };
}

/** Square metres under so many of a part, stacked on each other up to `height`; none for parts without a size. */
export function floorOf({ size }: Part, count: number, height: number): number {
  if (!size) return 0;
  const stacked = Math.max(1, Math.floor(height / size.height + 1e-9));
  return Math.ceil(count / stacked) * size.length * size.width;
}

/** Whether one of a part goes onto a bed by itself. */
export function fitsAlone({ mass, size }: Part, bed: Truck): boolean {
  const flat =
    !size ||
    (Math.max(size.length, size.width) <= bed.length &&
      Math.min(size.length, size.width) <= bed.width &&
      size.height <= bed.height);
  return mass <= bed.mass && flat;
}

function takes({ counts, kilograms }: Open, part: Part, pallet: Pallet): boolean {
  const more = new Map(counts).set(part, (counts.get(part) ?? 0) + 1);
  return (
    kilograms + part.mass <= pallet.mass && bedOf(more, pallet) <= pallet.length * pallet.width
  );
}

function bedOf(counts: ReadonlyMap<Part, number>, { height }: Pallet): number {
  let bed = 0;
  for (const [part, count] of counts) {
    bed += floorOf(part, count, height);
  }
  return bed;
}

/** A loaded pallet as a truck sees it: one piece, that nothing is stacked on. */
function asLot({ name, loaded, firstTask }: PackedPallet, pallet: Pallet): Lot {
  const { length, width, height } = pallet;
  const part: Part = {
    id: name,
    name,
    group: palletGroup,
    mass: loaded,
    carriers: 0,
    count: 1,
    per: 'bridge',
    size: { length, width, height },
  };
  return { group: palletGroup, of: null, task: firstTask, parts: [{ part, count: 1 }] };
}
