import { Type } from 'typebox';
import { ownKit } from '#domain/forecast/after/ownKit.ts';
import type { Review } from '#domain/forecast/after/review.ts';
import { crewsCsv, proposalsCsv, reviewJson, tasksCsv } from '#domain/forecast/after/reviewText.ts';
import { refusal } from '#domain/refusal.ts';
import { RefusalReply } from '#shared/wire.ts';
import { KitListed } from '#shared/wireBuilds.ts';
import { OwnKitRequest, ReviewReply } from '#shared/wireReview.ts';
import { unknownKit } from '../kits.ts';
import { Reviews } from '../live/reviews.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

const callers = ['leader'] as const;
const ofBuild = Type.Object({ build: Type.String() });

/** The files of a review, by name: what is in each, and of what type. */
const files: Readonly<Record<string, { text: (review: Review) => string; type: string }>> = {
  'review.json': { text: reviewJson, type: 'application/json; charset=utf-8' },
  'tasks.csv': { text: tasksCsv, type: 'text/csv; charset=utf-8' },
  'crews.csv': { text: crewsCsv, type: 'text/csv; charset=utf-8' },
  'proposals.csv': { text: proposalsCsv, type: 'text/csv; charset=utf-8' },
};
const FileName = Type.Union(Object.keys(files).map((name) => Type.Literal(name)));

/** After the build: planned against actual, its files, and an own copy of the kit with the minutes that the leader accepts. */
export function reviewRoutes(app: App, { builds, ledger, clock, kits, shelf }: Site): void {
  const reviews = new Reviews(ledger, kits);

  async function reviewed(build: string): Promise<ReviewReply | null> {
    const running = await builds.get(build);
    return running && reviews.review(build, running.live.state, clock.now().toISOString());
  }

  app.get(
    '/api/builds/:build/review',
    {
      config: { callers },
      schema: {
        summary: 'Planned against actual, and minutes proposed for the kit',
        params: ofBuild,
        response: { 200: ReviewReply, 404: RefusalReply },
      },
    },
    async (request, reply) => (await reviewed(request.params.build)) ?? buildUnknown(reply),
  );

  app.get(
    '/api/builds/:build/review/:file',
    {
      config: { callers },
      schema: {
        summary: 'The review as a file: JSON whole, or a table of tasks, crews or proposals',
        params: Type.Object({ build: Type.String(), file: FileName }),
        produces: ['application/json', 'text/csv'],
        response: { 200: Type.String(), 400: RefusalReply, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build, file } = request.params;
      const found = await reviewed(build);
      if (!found) return buildUnknown(reply);
      const { text, type } = files[file]!;
      return reply
        .type(type)
        .header(
          'content-disposition',
          `attachment; filename="${plain(found.review.build)}-${file}"`,
        )
        .send(text(found.review));
    },
  );

  app.post(
    '/api/builds/:build/review/kit',
    {
      config: { callers },
      schema: {
        summary:
          'An own copy of the kit with proposed minutes accepted; later builds can choose it',
        params: ofBuild,
        body: OwnKitRequest,
        response: {
          201: KitListed,
          400: RefusalReply,
          404: RefusalReply,
          409: RefusalReply,
        },
      },
    },
    async (request, reply) => {
      const found = await reviewed(request.params.build);
      if (!found) return buildUnknown(reply);
      const { name, tasks } = request.body;
      const kit = kits.get(found.kit ?? '')?.kit;
      if (!kit) return refuse(reply, unknownKit(kits, found.kit ?? ''));
      const { proposals } = found.review;
      const unknown = tasks.find((id) => !proposals.some(({ task }) => task === id));
      if (unknown !== undefined) {
        const sentence = found.open
          ? `No minutes are proposed for ${unknown}. Load the review again, then choose.`
          : 'Minutes are proposed once the bridge is open to traffic.';
        return refuse(reply, refusal('task-unknown', sentence, [unknown]));
      }
      const accepted = proposals.filter(({ task }) => tasks.includes(task));
      const added = await shelf.add(ownKit(kit, accepted, name));
      if (!added.ok) return refuse(reply, added.reason);
      const { title, manner, notForUse } = added.value.kit;
      return reply.code(201).send({ name, title, manner, notForUse, hash: added.value.hash });
    },
  );
}

/** A name that every file system takes. */
function plain(name: string): string {
  return (
    name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-+|-+$/g, '') || 'build'
  );
}
