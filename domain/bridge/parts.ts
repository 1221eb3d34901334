import type { Kit, Part } from '../kit/kit.ts';
import type { Bridge } from './bridge.ts';

/** How many of a part a bridge of so many bays and nose sections takes. */
export function partCount(part: Part, bays: number, sections: number): number {
  switch (part.per) {
    case 'bay':
      return part.count * bays;
    case 'section':
      return part.count * sections;
    case 'bridge':
      return part.count;
  }
}

/** What has to be on site for the whole bridge, in the kit's order; parts that it takes none of are left out. */
export function partsList(kit: Kit, bays: number, sections: number): Bridge['parts'] {
  return kit.parts
    .map((part) => ({
      part: part.name,
      count: partCount(part, bays, sections),
      kilograms: part.mass,
      carriers: part.carriers,
    }))
    .filter(({ count }) => count > 0);
}
