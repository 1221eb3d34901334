import { Type } from 'typebox';
import { refusal } from '#domain/refusal.ts';
import { LinkInfo, LinkRequest, NewLink, RefusalReply } from '#shared/wire.ts';
import { linkInfo, makeLink } from '../access/links.ts';
import type { StoredLink } from '../ledger/ledger.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

const callers = ['leader', 'host'] as const;
const ofBuild = Type.Object({ build: Type.String() });
const ofLink = Type.Object({ build: Type.String(), link: Type.String() });

/** The links of a build: list, make, withdraw, renew. The host may too, for a leader who lost their own. */
export function linkRoutes(app: App, site: Site): void {
  const { builds, ledger, clock } = site;

  async function liveLink(build: string, id: string): Promise<StoredLink | null> {
    const links = await ledger.links(build);
    return links.find((link) => link.id === id && link.withdrawnAt === null) ?? null;
  }

  async function withdraw(build: string, id: string): Promise<boolean> {
    const withdrawn = await ledger.withdrawLink(id, clock.now().toISOString());
    if (withdrawn) builds.closeFeeds(build, id);
    return withdrawn;
  }

  app.get(
    '/api/builds/:build/links',
    {
      config: { callers },
      schema: {
        summary: 'The links of a build, without their secrets',
        params: ofBuild,
        response: { 200: Type.Object({ links: Type.Array(LinkInfo) }), 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build } = request.params;
      if (!(await ledger.head(build))) return buildUnknown(reply);
      return { links: (await ledger.links(build)).map(linkInfo) };
    },
  );

  app.post(
    '/api/builds/:build/links',
    {
      config: { callers },
      schema: {
        summary: 'Make a link; its address is shown this once',
        params: ofBuild,
        body: LinkRequest,
        response: { 201: NewLink, 400: RefusalReply, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build } = request.params;
      const running = await builds.get(build);
      if (!running) return buildUnknown(reply);
      const { role, crew } = request.body;
      if ((role === 'chief') !== (crew !== undefined)) {
        const sentence = 'A chief’s link names its crew, and no other link does.';
        return refuse(reply, refusal('form-wrong', sentence, ['crew']));
      }
      if (crew !== undefined && !running.live.state.work.crews.some(({ id }) => id === crew)) {
        const sentence = `There is no crew "${crew}" in this build. Choose one of its crews.`;
        return refuse(reply, refusal('crew-unknown', sentence, [crew]));
      }
      const { stored, shown } = makeLink(site, build, request.body);
      await ledger.addLink(stored);
      return reply.code(201).send(shown);
    },
  );

  app.delete(
    '/api/builds/:build/links/:link',
    {
      config: { callers },
      schema: {
        summary: 'Withdraw a link: its pages close at once',
        params: ofLink,
        response: { 204: Type.Null(), 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build, link } = request.params;
      if (!(await liveLink(build, link))) return noSuchLink(reply);
      await withdraw(build, link);
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/api/builds/:build/links/:link/renewal',
    {
      config: { callers },
      schema: {
        summary: 'Withdraw a link and make one like it',
        params: ofLink,
        response: { 201: NewLink, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build, link } = request.params;
      const old = await liveLink(build, link);
      if (!old) return noSuchLink(reply);
      const { role, name, crew } = linkInfo(old);
      const { stored, shown } = makeLink(site, build, { role, name, crew: crew ?? null });
      await ledger.addLink(stored);
      await withdraw(build, link);
      return reply.code(201).send(shown);
    },
  );
}

function noSuchLink(reply: Parameters<typeof refuse>[0]): ReturnType<typeof refuse> {
  const sentence = 'There is no such link, or it was withdrawn already. Load the list again.';
  return refuse(reply, refusal('link-not-found', sentence));
}
