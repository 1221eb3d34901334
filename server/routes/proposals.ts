import { Type } from 'typebox';
import { refusal } from '#domain/refusal.ts';
import { Proposal, ProposalRequest, RefusalReply } from '#shared/wire.ts';
import { memberOf } from '../access/gate.ts';
import { makeProposal } from '../live/makeProposal.ts';
import { sseEvent } from '../live/sse.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

const callers = ['leader'] as const;

/** Plans on trial: made in the background, kept in memory until accepted, stopped or dropped. */
export function proposalRoutes(app: App, site: Site): void {
  const { builds, proposals, planner, clock, ids, runs } = site;

  app.post(
    '/api/builds/:build/proposals',
    {
      config: { callers },
      schema: {
        summary: 'Plan again with changes; recorded nowhere until accepted',
        description:
          'Answers when the plan is made. Meanwhile `progress` events with the proposal as `job` go to the pages of this link; DELETE, or giving up the request, stops it.',
        params: Type.Object({ build: Type.String() }),
        body: ProposalRequest,
        response: {
          201: Proposal,
          400: RefusalReply,
          404: RefusalReply,
          409: RefusalReply,
          422: RefusalReply,
        },
      },
    },
    async (request, reply) => {
      const { build } = request.params;
      const running = await builds.get(build);
      if (!running) return buildUnknown(reply);
      const { live } = running;
      const { link } = memberOf(request);
      const { proposal: id = ids.long(), changes } = request.body;
      const stop = proposals.begin(build, id);
      if (!stop) {
        const sentence = 'This id already names a plan. Ask again with an id of its own.';
        return refuse(reply, refusal('id-used-otherwise', sentence));
      }
      const gaveUp = () => stop.abort();
      reply.raw.once('close', gaveUp);
      const progress = (done: number, of: number) =>
        live.feeds.send(sseEvent('progress', { job: id, done, of }), link);
      try {
        const made = await makeProposal(
          { live, planner, runs },
          { id, changes, now: clock.now().toISOString() },
          { signal: stop.signal, onProgress: progress },
        );
        if (!made.ok) return refuse(reply, made.reason);
        proposals.keep(id, made.value.kept);
        return reply.code(201).send(made.value.shown);
      } catch (error) {
        if (!stop.signal.aborted) throw error;
        const sentence = 'Planning was stopped. The plan in force stands.';
        return refuse(reply, refusal('proposal-cancelled', sentence));
      } finally {
        reply.raw.off('close', gaveUp);
        proposals.end(id);
        progress(1, 1);
      }
    },
  );

  app.delete(
    '/api/builds/:build/proposals/:proposal',
    {
      config: { callers },
      schema: {
        summary: 'Stop or forget a plan on trial',
        params: Type.Object({ build: Type.String(), proposal: Type.String() }),
        response: { 204: Type.Null(), 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build, proposal } = request.params;
      if (!proposals.drop(build, proposal)) {
        const sentence = 'This plan is not kept here, or no longer.';
        return refuse(reply, refusal('proposal-unknown', sentence));
      }
      return reply.code(204).send(null);
    },
  );
}
