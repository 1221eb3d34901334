import { Type } from 'typebox';
import { usualSizes } from '#domain/forecast/moves/lever.ts';
import { type Moved, movedSentence } from '#domain/forecast/moves/whatMovesIt.ts';
import { seenNow } from '#domain/progress/views/seenNow.ts';
import { refusal } from '#domain/refusal.ts';
import { RefusalReply } from '#shared/wire.ts';
import { type LeverMoved, MovesReply, MovesRequest } from '#shared/wireForecast.ts';
import { memberOf } from '../access/gate.ts';
import { seedOf, whyNoForecast } from '../live/forecastJob.ts';
import { hundredths } from '../live/hundredths.ts';
import { RunningJobs } from '../live/runningJobs.ts';
import { sseEvent } from '../live/sse.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

const callers = ['leader'] as const;

/** What would move the opening: tried out in the background, recorded nowhere. */
export function moveRoutes(app: App, { builds, planner, clock, ids, runs }: Site): void {
  const jobs = new RunningJobs();

  app.post(
    '/api/builds/:build/forecast/moves',
    {
      config: { callers },
      schema: {
        summary: 'What would move the opening, and what cannot',
        description:
          'Answers when all is tried. Meanwhile `progress` events with `job` go to the pages of this link; DELETE, or giving up the request, stops it.',
        params: Type.Object({ build: Type.String() }),
        body: MovesRequest,
        response: { 200: MovesReply, 400: RefusalReply, 404: RefusalReply, 409: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build } = request.params;
      const running = await builds.get(build);
      if (!running) return buildUnknown(reply);
      const { live } = running;
      const { state } = live;
      const why = whyNoForecast(state);
      if (why !== null || state.plan === null) {
        const sentence = `${why} So there is nothing that would move the opening.`;
        return refuse(reply, refusal('nothing-to-forecast', sentence));
      }
      const { job = ids.long(), sizes } = request.body;
      const stop = jobs.begin(build, job);
      if (!stop) {
        const sentence = 'This id already names a job. Ask again with an id of its own.';
        return refuse(reply, refusal('id-used-otherwise', sentence));
      }
      const gaveUp = () => stop.abort();
      reply.raw.once('close', gaveUp);
      const { link } = memberOf(request);
      const progress = (done: number, of: number) =>
        live.feeds.send(sseEvent('progress', { job, done, of }), link);
      const at = clock.now().toISOString();
      try {
        const found = await planner.movesIt(
          {
            seen: seenNow(state, state.plan, at),
            sizes: { ...usualSizes, ...sizes },
            runs,
            seed: seedOf(build),
          },
          { signal: stop.signal, onProgress: progress },
        );
        const { ranked, cannotHelp, cannotHurt } = found;
        return {
          job,
          number: state.number,
          at,
          ranked: ranked.map(shown),
          cannotHelp: cannotHelp.map(shown),
          cannotHurt: cannotHurt.map(shown),
        };
      } catch (error) {
        if (!stop.signal.aborted) throw error;
        return refuse(reply, refusal('job-cancelled', 'It was stopped. Nothing was changed.'));
      } finally {
        reply.raw.off('close', gaveUp);
        jobs.end(job);
        progress(1, 1);
      }
    },
  );

  app.delete(
    '/api/builds/:build/forecast/moves/:job',
    {
      config: { callers },
      schema: {
        summary: 'Stop trying out what would move the opening',
        params: Type.Object({ build: Type.String(), job: Type.String() }),
        response: { 204: Type.Null(), 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build, job } = request.params;
      if (jobs.stop(build, job)) return reply.code(204).send(null);
      const sentence = 'No such job is under way here, or no longer.';
      return refuse(reply, refusal('job-unknown', sentence, [job]));
    },
  );
}

function shown(moved: Moved): LeverMoved {
  const { gain50, gain80 } = moved;
  return {
    ...moved,
    gain50: hundredths(gain50),
    gain80: hundredths(gain80),
    sentence: movedSentence(moved),
  };
}
