import type { Kit } from '../../kit/kit.ts';
import { usesOf } from '../../tasks/fromKit/uses.ts';
import type { Work } from '../../tasks/work.ts';
import type { Bridge } from '../bridge.ts';
import { type Carrying, carrying } from './carrying.ts';
import { deckCircuit } from './deckCircuit.ts';
import { layStacks, type Stack } from './layStacks.ts';
import { lotsInOrder } from './needs.ts';
import { type Packing, packTrucks } from './packTrucks.ts';

/** The stores of a bridge: what is brought, in what order, where it lies and how it is carried. */
export type Stores = {
  readonly kilograms: number;
  /** From the stacks to the front rollers, by what lies there: metres. */
  readonly walk: number;
  readonly carrying: readonly Carrying[];
  /** Null where the kit does not say what a truck takes. */
  readonly packing: Packing | null;
  readonly stacks: readonly Stack[];
  /** The circuit to the middle of the bridge; null where the kit says nothing of carrying. */
  readonly deck: { readonly metres: number; readonly round: number; readonly teams: number } | null;
};

/** Way that is left free behind the front rollers before the first stack. Metres. */
const free = 2;

/** Works the stores out for the order of work that was made of that bridge and kit. */
export function storesOf(bridge: Bridge, kit: Kit, work: Work): Stores {
  const lots = lotsInOrder(bridge, kit, usesOf(bridge, kit, work));
  const stacks = layStacks(lots, free);
  const walks = stacks.map(({ walk, kilograms }) => walk * kilograms);
  const kilograms = stacks.reduce((sum, stack) => sum + stack.kilograms, 0);
  const walk = walks.reduce((sum, one) => sum + one, 0) / Math.max(1, kilograms);
  const deck = stacks.find(({ group }) => group === 'deck');
  const circuit = kit.carry && deck ? deckCircuit(kit.carry, deck.walk + bridge.length / 2) : null;
  return {
    kilograms,
    walk,
    carrying: carrying(kit, bridge, walk),
    packing: kit.truck ? packTrucks(lots, kit.truck, kit.pallet) : null,
    stacks,
    deck: circuit && { metres: circuit.metres, round: circuit.round, teams: circuit.teams },
  };
}
