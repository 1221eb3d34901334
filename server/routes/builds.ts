import { Type } from 'typebox';
import type { Entry, EntryBody } from '#domain/progress/entry.ts';
import { refusal } from '#domain/refusal.ts';
import { RefusalReply } from '#shared/wire.ts';
import { BuildListed, OpenedBuild, OpenRequest } from '#shared/wireBuilds.ts';
import { buildOpenedBy, openBuild } from '../live/openBuild.ts';
import { openingOf } from '../live/openingOf.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';

/** Tables come whole in one request. */
const tablesLimit = 1_000_000;

/** GET and POST /api/builds: the host lists builds and opens new ones. */
export function buildRoutes(app: App, site: Site): void {
  const { ledger, kits, clock, program } = site;
  let line: Promise<unknown> = Promise.resolve();

  /** One opening at a time, so that a request sent twice at once opens one build. */
  function inTurn<Value>(work: () => Promise<Value>): Promise<Value> {
    const turn = line.then(work);
    line = turn.catch(() => {});
    return turn;
  }

  app.get(
    '/api/builds',
    {
      config: { callers: ['host'] },
      schema: {
        summary: 'The builds of this server',
        response: { 200: Type.Object({ builds: Type.Array(BuildListed) }) },
      },
    },
    async () => {
      const heads = await ledger.heads();
      const builds = heads.map(async ({ build, number }): Promise<BuildListed> => {
        const [first] = await ledger.entries(build, 0, 1);
        const entry = JSON.parse(first?.text ?? '{}') as Entry;
        const { name, unit, start, zone } = entry.body as EntryBody<'open-build'>;
        return { build, name, unit, start, zone, number };
      });
      return { builds: await Promise.all(builds) };
    },
  );

  app.post(
    '/api/builds',
    {
      config: { callers: ['host'] },
      bodyLimit: tablesLimit,
      schema: {
        summary: 'Open a build from a bridge, from tables, or empty',
        body: OpenRequest,
        response: {
          201: OpenedBuild,
          400: RefusalReply,
          404: RefusalReply,
          409: RefusalReply,
          422: RefusalReply,
        },
      },
    },
    (request, reply) =>
      inTurn(async () => {
        const { id } = request.body;
        const known = await buildOpenedBy(ledger, id);
        if (known !== null) {
          const sentence =
            'This build was opened by an earlier attempt. Make new links for it from the list of builds.';
          return refuse(reply, refusal('build-exists', sentence, [known]));
        }
        const now = clock.now().toISOString();
        const opening = openingOf(request.body, { kits, program, now });
        if (!opening.ok) return refuse(reply, opening.reason);
        const opened = await openBuild(site, opening.value);
        if (!opened.ok) return refuse(reply, opened.reason);
        return reply.code(201).send(opened.value);
      }),
  );
}
