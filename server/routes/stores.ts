import { Type } from 'typebox';
import { RefusalReply } from '#shared/wire.ts';
import { StoresReply } from '#shared/wireStores.ts';
import { everyRole } from '../access/gate.ts';
import { storesNow } from '../live/storesNow.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

/** GET /api/builds/:build/stores: parts, stacks, carrying, packing, and when each load is wanted. */
export function storesRoute(app: App, { builds, kits, clock }: Site): void {
  app.get(
    '/api/builds/:build/stores',
    {
      config: { callers: everyRole },
      schema: {
        summary: 'Stores: parts, stacks, carrying, packing, and when each load is wanted',
        params: Type.Object({ build: Type.String() }),
        response: { 200: StoresReply, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build } = request.params;
      const running = await builds.get(build);
      if (!running) return buildUnknown(reply);
      const { state } = running.live;
      const found = state.bridge && kits.get(state.bridge.kit.name);
      // A kit file that was changed since packs another bridge than the one that is built.
      const kit = found && found.hash === state.bridge?.kit.hash ? found.kit : null;
      return storesNow(build, state, kit, clock.now().toISOString());
    },
  );
}
