import type { Bridge } from '../../bridge/bridge.ts';
import { partCount } from '../../bridge/parts.ts';
import type { Kit, LoadTemplate } from '../../kit/kit.ts';
import { lotsOf, numbers } from './lots.ts';

/** A truck load of this bridge and what is on it. */
export type CarriedLoad = {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  /** The template it is made from. */
  readonly from: string;
  readonly arrives: number;
  readonly tonnes: number;
  /** Bays that it carries parts of; null for a load that belongs to no bay. */
  readonly bays: readonly number[] | null;
  /** Groups it carries: those of its bays, or whole. */
  readonly carries: readonly { readonly group: string; readonly bays: readonly number[] | null }[];
};

/** The truck loads of a bridge, numbered in the kit's order. */
export function loadsOf(kit: Kit, bridge: Bridge): CarriedLoad[] {
  const loads: CarriedLoad[] = [];
  for (const template of kit.loads) {
    const lots = baysOf(template, bridge);
    for (const [at, bays] of lots.entries()) {
      const last = at === lots.length - 1 ? (template.last ?? []) : [];
      const carries = [
        ...(template.bays && bays ? [{ group: template.bays.group, bays }] : []),
        ...[...template.groups, ...last].map((group) => ({ group, bays: null })),
      ];
      const number = loads.length + 1;
      loads.push({
        id: `load-${number}`,
        number,
        name: template.name
          .replaceAll('{load}', String(number))
          .replaceAll('{bays}', bayWords(bays ?? [])),
        from: template.id,
        arrives: template.arrives + at * (template.every ?? 0),
        tonnes: Math.round(massOf(kit, bridge, carries)) / 1000,
        bays,
        carries,
      });
    }
  }
  return loads;
}

/** The loads that carry a group of parts, for those bays where it is carried bay by bay. */
export function loadsCarrying(
  loads: readonly CarriedLoad[],
  group: string,
  bays: readonly number[] | null,
): CarriedLoad[] {
  return loads.filter(({ carries }) =>
    carries.some(
      (carried) =>
        carried.group === group &&
        (carried.bays === null || bays === null || bays.some((bay) => carried.bays?.includes(bay))),
    ),
  );
}

/** Bays of each load of a template; one entry for each load. */
function baysOf({ bays: wanted }: LoadTemplate, bridge: Bridge): (readonly number[] | null)[] {
  if (!wanted) {
    return [null];
  }
  const to = Math.min(wanted.to ?? bridge.bays, bridge.bays);
  const bays = numbers(to).slice((wanted.from ?? 1) - 1);
  return bays.length === 0
    ? []
    : lotsOf(bays, wanted.lot ?? bays.length, wanted.rearFirst ?? false);
}

/** Kilograms of what a load carries. */
function massOf(kit: Kit, bridge: Bridge, carries: CarriedLoad['carries']): number {
  let kilograms = 0;
  for (const { group, bays } of carries) {
    for (const part of kit.parts.filter((one) => one.group === group)) {
      kilograms += part.mass * partCount(part, bays?.length ?? bridge.bays, bridge.nose);
    }
  }
  return kilograms;
}

/** "bay 4", "bays 4 and 5", "bays 4 to 9". Bays in rising order without holes. */
export function bayWords(bays: readonly number[]): string {
  const first = bays[0];
  const last = bays.at(-1);
  if (bays.length <= 1 || first === undefined || last === undefined) {
    return `bay ${first ?? ''}`.trim();
  }
  return bays.length === 2 ? `bays ${first} and ${last}` : `bays ${first} to ${last}`;
}
