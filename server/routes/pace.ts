import { Type } from 'typebox';
import { RefusalReply } from '#shared/wire.ts';
import { PaceReply } from '#shared/wireForecast.ts';
import { paceShown } from '../live/paceShown.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

/** GET /api/builds/:build/pace: how fast each crew is, which is the leader's to know and nobody else's. */
export function paceRoute(app: App, { builds, clock }: Site): void {
  app.get(
    '/api/builds/:build/pace',
    {
      config: { callers: ['leader'] },
      schema: {
        summary: 'The pace of each crew in plain words, for the leader alone',
        params: Type.Object({ build: Type.String() }),
        response: { 200: PaceReply, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const running = await builds.get(request.params.build);
      if (!running) return buildUnknown(reply);
      return paceShown(running.live.state, clock.now().toISOString());
    },
  );
}
