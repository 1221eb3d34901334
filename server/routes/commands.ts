import { Type } from 'typebox';
import { CommandRequest, Receipt, RefusalReply } from '#shared/wire.ts';
import { everyRole, memberOf } from '../access/gate.ts';
import { takeCommand } from '../live/takeCommand.ts';
import { bodyReader } from '../live/wireCommand.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

/** POST /api/builds/:build/commands: one ask or tell. */
export function commandRoute(app: App, { builds, clock, kits, ledger, proposals }: Site): void {
  const readBody = bodyReader(kits, proposals);
  app.post(
    '/api/builds/:build/commands',
    {
      config: { callers: everyRole },
      schema: {
        summary: 'One ask or tell; the same id again gets the same answer',
        params: Type.Object({ build: Type.String() }),
        body: CommandRequest,
        response: {
          200: Receipt,
          400: Type.Union([Receipt, RefusalReply]),
          403: Type.Union([Receipt, RefusalReply]),
          404: Type.Union([Receipt, RefusalReply]),
          409: Receipt,
          422: Receipt,
        },
      },
    },
    async (request, reply) => {
      const receivedAt = clock.now().toISOString();
      const running = await builds.get(request.params.build);
      if (!running) return buildUnknown(reply);
      const { author } = memberOf(request);
      const { live } = running;
      const taken = await takeCommand({ live, ledger, readBody }, author, request.body, receivedAt);
      return reply
        .code(taken.status as 200)
        .type('application/json; charset=utf-8')
        .serializer((text: unknown) => text as string)
        .send(taken.text as never);
    },
  );
}
