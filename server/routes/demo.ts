import { refusal } from '#domain/refusal.ts';
import { RefusalReply } from '#shared/wire.ts';
import { DemoRequest, OpenedBuild } from '#shared/wireBuilds.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';

/** POST /api/demo: starts another demo build. */
export function demoRoute(app: App, { openDemo }: Site): void {
  app.post(
    '/api/demo',
    {
      config: { callers: ['leader', 'host'] },
      schema: {
        summary: 'Start another demo build, half built unless asked otherwise',
        body: DemoRequest,
        response: { 201: OpenedBuild, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      if (!openDemo) {
        const sentence = 'This server was started without a demo. Start it with --demo.';
        return refuse(reply, refusal('route-unknown', sentence));
      }
      return reply.code(201).send(await openDemo(request.body.how ?? 'half-built'));
    },
  );
}
