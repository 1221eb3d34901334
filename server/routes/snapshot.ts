import { Type } from 'typebox';
import { foldVersion } from '#domain/progress/state.ts';
import { RefusalReply, Snapshot } from '#shared/wire.ts';
import { everyRole, memberOf } from '../access/gate.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

/** GET /api/builds/:build: all that is known of a build now. */
export function snapshotRoute(app: App, { builds, clock }: Site): void {
  app.get(
    '/api/builds/:build',
    {
      config: { callers: everyRole },
      schema: {
        summary: 'All that is known of a build now',
        params: Type.Object({ build: Type.String() }),
        response: { 200: Snapshot, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const running = await builds.get(request.params.build);
      if (!running) return buildUnknown(reply);
      const { live, forecaster, replanner } = running;
      const you = memberOf(request).author;
      return {
        build: live.build,
        fold: foldVersion,
        state: live.state,
        you,
        forecast: forecaster.frame,
        ...(you.role === 'leader' && { offer: replanner.offer }),
        now: clock.now().toISOString(),
      };
    },
  );
}
