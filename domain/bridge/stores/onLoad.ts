import type { Kit } from '../../kit/kit.ts';
import { loadsOf } from '../../tasks/fromKit/loads.ts';
import type { Bridge } from '../bridge.ts';
import { partCount } from '../parts.ts';

/** So many of a part on one load. */
export type OnLoad = {
  /** Id of the part in the kit. */
  readonly id: string;
  readonly part: string;
  readonly count: number;
  /** Mass of one. */
  readonly kilograms: number;
};

/** What each load of a bridge carries, by the load's id: what is counted at the tailgate. */
export function partsOnLoads(kit: Kit, bridge: Bridge): ReadonlyMap<string, readonly OnLoad[]> {
  return new Map(
    loadsOf(kit, bridge).map(({ id, carries }) => {
      const parts = carries.flatMap(({ group, bays }) =>
        kit.parts
          .filter((part) => part.group === group)
          .map((part): OnLoad => {
            const count = partCount(part, bays?.length ?? bridge.bays, bridge.nose);
            return { id: part.id, part: part.name, count, kilograms: part.mass };
          }),
      );
      return [id, parts.filter(({ count }) => count > 0)];
    }),
  );
}
