import { RefusalReply } from '#shared/wire.ts';
import { BridgeReply, BridgeRequest } from '#shared/wireBuilds.ts';
import { designWork } from '../kits.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';

/** POST /api/bridges: designs a bridge and says what it takes, recorded nowhere. */
export function bridgeRoute(app: App, { kits }: Site): void {
  app.post(
    '/api/bridges',
    {
      config: { callers: ['leader', 'host'] },
      schema: {
        summary: 'Design a bridge for a ground, recorded nowhere',
        body: BridgeRequest,
        response: { 200: BridgeReply, 400: RefusalReply, 404: RefusalReply, 422: RefusalReply },
      },
    },
    async (request, reply) => {
      const designed = designWork(kits, request.body);
      if (!designed.ok) return refuse(reply, designed.reason);
      const { bridge, work } = designed.value;
      const own = work.crews.filter(({ attached }) => !attached);
      return {
        bridge,
        work: {
          tasks: work.tasks.length,
          holds: work.tasks.filter(({ hold }) => hold).length,
          people: own.reduce((sum, { people }) => sum + people, 0),
          loads: work.loads.length,
        },
      };
    },
  );
}
