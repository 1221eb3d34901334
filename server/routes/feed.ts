import { Type } from 'typebox';
import { refusal } from '#domain/refusal.ts';
import { RefusalReply } from '#shared/wire.ts';
import { everyRole, memberOf } from '../access/gate.ts';
import { openFeed } from '../live/openFeed.ts';
import { sseEvent } from '../live/sse.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';
import { count } from './query.ts';

/** GET /api/builds/:build/feed?after=N: what happens after entry N, as it happens (text/event-stream). */
export function feedRoute(app: App, { builds, clock }: Site): void {
  app.get(
    '/api/builds/:build/feed',
    {
      config: { callers: everyRole, rateLimit: false },
      schema: {
        summary: 'What happens after entry N, as it happens',
        description:
          'Events `delta` (with the record number as id), `forecast`, `progress`, `beat` and, to leaders, `offer`; data are DeltaFrame, ForecastFrame, ProgressFrame, BeatFrame and OfferFrame as JSON.',
        params: Type.Object({ build: Type.String() }),
        querystring: Type.Object({ after: count }),
        produces: ['text/event-stream'],
        response: { 200: Type.String(), 404: RefusalReply, 410: RefusalReply },
      },
    },
    async (request, reply) => {
      const running = await builds.get(request.params.build);
      if (!running) return buildUnknown(reply);
      const { live, forecaster, replanner } = running;
      const missed = live.since(Number(request.query.after));
      if (!missed) {
        const sentence = 'Too much has happened since. Load the build again, then follow it.';
        return refuse(reply, refusal('feed-gone', sentence));
      }
      // From here on nothing waits, so that no entry falls between replay and feed.
      const { raw } = reply;
      const { link, author } = memberOf(request);
      reply.hijack();
      raw.writeHead(200, {
        ...(reply.getHeaders() as Record<string, string>),
        'content-type': 'text/event-stream; charset=utf-8',
        'x-accel-buffering': 'no',
      });
      const feed = openFeed(raw, { link, role: author.role }, (gone) => live.feeds.remove(gone));
      live.feeds.add(feed);
      feed.send(sseEvent('beat', { now: clock.now().toISOString() }));
      for (const event of missed) feed.send(event);
      if (forecaster.frame) feed.send(sseEvent('forecast', forecaster.frame));
      if (author.role === 'leader') feed.send(sseEvent('offer', replanner.offer));
      forecaster.freshen();
      return reply;
    },
  );
}
