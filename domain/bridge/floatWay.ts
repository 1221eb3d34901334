import type { Kit } from '../kit/kit.ts';
import { floatStages } from './floatOut.ts';
import type { Ground } from './ground.ts';
import { betweenBearings, lengthNeeded } from './reach.ts';
import type { Way } from './way.ts';

/** The way of a floating bridge: boomed out from the near bank in the kit's lots. */
export function floatWay(
  ground: Ground,
  kit: Kit,
  boom: NonNullable<Kit['boom']>,
  bays: number,
): Way {
  const spare = bays * kit.bay.length - lengthNeeded(ground, kit);
  const landsAt = betweenBearings(ground);
  const final = landsAt + kit.bearing.far + spare / 2;
  return {
    girder: {
      bayLength: kit.bay.length,
      nose: 0,
      noseLength: 0,
      masses: { bay: kit.bay.bare, deck: kit.bay.deck, nose: 0 },
    },
    stages: floatStages({ bays, bayLength: kit.bay.length, lot: boom.lot, landsAt, final }),
    landsAt,
    room: boom.lot * kit.bay.length + boom.room,
    limits: [],
  };
}
