import { Type } from 'typebox';
import type { App, Site } from '../site.ts';

/** GET /api/health: whether the server answers and its ledger can be read. */
export function healthRoute(app: App, site: Site): void {
  app.get(
    '/api/health',
    {
      config: { callers: 'anyone' },
      schema: {
        summary: 'Whether the server answers and its ledger can be read',
        security: [],
        response: { 200: Type.Object({ ok: Type.Literal(true), program: Type.String() }) },
      },
    },
    async () => {
      await site.ledger.heads();
      return { ok: true as const, program: site.program };
    },
  );
}
