import { Type } from 'typebox';
import { RefusalReply } from '#shared/wire.ts';
import { RecordPage } from '#shared/wireBuilds.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';
import { count } from './query.ts';

const mostEntries = 500;

/** GET /api/builds/:build/record?after=N&limit=N: the exact texts of entries, and hashes to check them by. */
export function recordRoute(app: App, { ledger }: Site): void {
  app.get(
    '/api/builds/:build/record',
    {
      config: { callers: ['leader', 'log', 'inspector'] },
      schema: {
        summary: 'Exact texts of entries, and hashes to check them by',
        params: Type.Object({ build: Type.String() }),
        querystring: Type.Object(
          { after: Type.Optional(count), limit: Type.Optional(count) },
          { additionalProperties: false },
        ),
        response: { 200: RecordPage, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build } = request.params;
      const head = await ledger.head(build);
      if (!head) return buildUnknown(reply);
      const limit = Math.min(Number(request.query.limit ?? mostEntries), mostEntries);
      const entries = await ledger.entries(build, Number(request.query.after ?? 0), limit);
      return { build, head: { number: head.number, hash: head.hash }, entries };
    },
  );
}
