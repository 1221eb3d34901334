import { Type } from 'typebox';
import { Kit } from '#domain/kit/kit.ts';
import { RefusalReply } from '#shared/wire.ts';
import { KitListed } from '#shared/wireBuilds.ts';
import { everyRole } from '../access/gate.ts';
import { unknownKit } from '../kits.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';

/** GET /api/kits and GET /api/kits/:name: the equipment sets that this server knows. */
export function kitRoutes(app: App, { kits }: Site): void {
  app.get(
    '/api/kits',
    {
      config: { callers: [...everyRole, 'host'] },
      schema: {
        summary: 'The equipment sets that this server knows',
        response: { 200: Type.Object({ kits: Type.Array(KitListed) }) },
      },
    },
    async () => ({
      kits: [...kits.values()].map(({ kit: { name, title, manner, notForUse }, hash }) => ({
        name,
        title,
        manner,
        notForUse,
        hash,
      })),
    }),
  );

  app.get(
    '/api/kits/:name',
    {
      config: { callers: [...everyRole, 'host'] },
      schema: {
        summary: 'One equipment set, whole',
        params: Type.Object({ name: Type.String() }),
        response: { 200: Kit, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const found = kits.get(request.params.name);
      return found ? found.kit : refuse(reply, unknownKit(kits, request.params.name));
    },
  );
}
