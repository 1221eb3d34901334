import { Type } from 'typebox';
import { refusal } from '#domain/refusal.ts';
import { Proposal, ProposalRequest, RefusalReply } from '#shared/wire.ts';
import type { PlanNews } from '#shared/wirePlan.ts';
import { memberOf } from '../access/gate.ts';
import type { LiveBuild } from '../live/liveBuild.ts';
import { makeProposal } from '../live/makeProposal.ts';
import type { Making } from '../live/proposals.ts';
import { sseEvent } from '../live/sse.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

const callers = ['leader'] as const;

const params = Type.Object({ build: Type.String(), proposal: Type.String() });

/** Plans on trial: made in the background, kept in memory until accepted, stopped or dropped. */
export function proposalRoutes(app: App, site: Site): void {
  makeRoute(app, site);
  readRoute(app, site);
  takeRoute(app, site);
  dropRoute(app, site);
}

function makeRoute(app: App, { builds, proposals, planner, searcher, clock, ids, runs }: Site) {
  app.post(
    '/api/builds/:build/proposals',
    {
      config: { callers },
      schema: {
        summary: 'Plan again with changes; recorded nowhere until accepted',
        description:
          'Answers when the plan is made. Meanwhile `progress` events with the proposal as `job` go to the pages of this link, in a search with the best plan and bound so far as `news`; `take` ends a search with what it has; DELETE, giving up the request, or a change of the work it is made for stops it.',
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
      const { proposal: id = ids.long(), changes, seconds } = request.body;
      const making = proposals.begin(build, id);
      if (!making) {
        const sentence = 'This id already names a plan. Ask again with an id of its own.';
        return refuse(reply, refusal('id-used-otherwise', sentence));
      }
      const { stop, take } = making;
      const gaveUp = () => stop.abort();
      reply.raw.once('close', gaveUp);
      const forget = seconds === undefined ? () => {} : stopWhenStale(live, making);
      let news: PlanNews | undefined;
      const progress = (done: number, of: number) =>
        live.feeds.send(
          sseEvent('progress', { job: id, done, of, ...(news !== undefined && { news }) }),
          link,
        );
      const options = { signal: stop.signal, onProgress: progress };
      const wanted = { id, changes, now: clock.now().toISOString() };
      try {
        const make = () => makeProposal({ live, planner, runs }, wanted, options);
        const search = (longest: number) =>
          builds.searching(() =>
            makeProposal(
              { live, planner, runs },
              {
                ...wanted,
                find: (job) =>
                  searcher.search(
                    { ...job, seconds: longest },
                    {
                      ...options,
                      take: take.signal,
                      onNews: (latest) => {
                        news = latest;
                      },
                    },
                  ),
              },
              // What comes after the search takes no time worth showing.
              { signal: stop.signal },
            ),
          );
        const made = await (seconds === undefined ? make() : search(seconds));
        if (!made.ok) return refuse(reply, made.reason);
        proposals.keep(id, made.value);
        return reply.code(201).send(made.value.shown);
      } catch (error) {
        if (!stop.signal.aborted) throw error;
        const sentence =
          stop.signal.reason === stale
            ? 'Work, crews or stores have changed while it searched. Search again.'
            : 'Planning was stopped. The plan in force stands.';
        return refuse(reply, refusal('proposal-cancelled', sentence));
      } finally {
        forget();
        reply.raw.off('close', gaveUp);
        proposals.end(id);
        progress(1, 1);
      }
    },
  );
}

const stale = 'stale';

/** Nobody could accept what a long search finds for work that is no longer so. */
function stopWhenStale(live: LiveBuild, { stop }: Making): () => void {
  return live.onChange((before, after) => {
    if (before.workNumber !== after.workNumber || before.plan !== after.plan) stop.abort(stale);
  });
}

function readRoute(app: App, { proposals }: Site): void {
  app.get(
    '/api/builds/:build/proposals/:proposal',
    {
      config: { callers },
      schema: {
        summary: 'A plan on trial, as long as it is kept',
        params,
        response: { 200: Proposal, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build, proposal } = request.params;
      const kept = proposals.find(build, proposal);
      return kept ? kept.shown : refuse(reply, unknown());
    },
  );
}

function takeRoute(app: App, { proposals }: Site): void {
  app.post(
    '/api/builds/:build/proposals/:proposal/take',
    {
      config: { callers },
      schema: {
        summary: 'End a search with the best plan found so far',
        params,
        response: { 204: Type.Null(), 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build, proposal } = request.params;
      if (!proposals.take(build, proposal)) return refuse(reply, unknown());
      return reply.code(204).send(null);
    },
  );
}

function dropRoute(app: App, { builds, proposals }: Site): void {
  app.delete(
    '/api/builds/:build/proposals/:proposal',
    {
      config: { callers },
      schema: {
        summary: 'Stop or forget a plan on trial',
        params,
        response: { 204: Type.Null(), 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build, proposal } = request.params;
      const running = await builds.get(build);
      running?.replanner.decline(proposal);
      if (!proposals.drop(build, proposal)) return refuse(reply, unknown());
      return reply.code(204).send(null);
    },
  );
}

function unknown() {
  return refusal('proposal-unknown', 'This plan is not kept here, or no longer.');
}
