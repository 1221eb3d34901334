import { Type } from 'typebox';
import { ForecastFrame, RefusalReply } from '#shared/wire.ts';
import { ToldForecasts } from '#shared/wireBuilds.ts';
import { ForecastHistory, FullForecast } from '#shared/wireForecast.ts';
import { everyRole, memberOf } from '../access/gate.ts';
import { fullForecast, moveFor } from '../live/fullForecast.ts';
import { thinned } from '../live/thinned.ts';
import { readTold } from '../live/toldTexts.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

const mostTold = 500;

const callers = ['leader', 'log', 'inspector', 'commander'] as const;
const params = Type.Object({ build: Type.String() });

/** The present forecast, plain and with all that it rests on; what was sent up before, and how it moved. */
export function forecastRoutes(app: App, { builds, ledger, clock }: Site): void {
  app.get(
    '/api/builds/:build/forecast',
    {
      config: { callers: everyRole },
      schema: {
        summary: 'The present forecast, or why there is none',
        params,
        response: { 200: Type.Union([ForecastFrame, Type.Null()]), 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const running = await builds.get(request.params.build);
      if (!running) return buildUnknown(reply);
      return running.forecaster.frame;
    },
  );

  app.get(
    '/api/builds/:build/forecast/full',
    {
      config: { callers },
      schema: {
        summary: 'The present forecast with doubt, conditions, light and what moved it',
        description: 'What it says of the pace of a crew is for the leader alone.',
        params,
        response: { 200: FullForecast, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const running = await builds.get(request.params.build);
      if (!running) return buildUnknown(reply);
      const { live, forecaster } = running;
      const { role } = memberOf(request).author;
      forecaster.freshen();
      const last = (await forecaster.log.moves()).at(-1) ?? null;
      const start = await forecaster.moves.sinceStart();
      const moved = { last: moveFor(role, last), start: moveFor(role, start) };
      return fullForecast(live.state, forecaster.frame, moved, clock.now().toISOString());
    },
  );

  app.get(
    '/api/builds/:build/forecast/history',
    {
      config: { callers },
      schema: {
        summary: 'How the forecast moved since the first, with what moved it',
        params,
        response: { 200: ForecastHistory, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const running = await builds.get(request.params.build);
      if (!running) return buildUnknown(reply);
      const { live, forecaster } = running;
      const { confidence } = live.state;
      const { role } = memberOf(request).author;
      const points = await forecaster.log.points(confidence);
      const moves = await forecaster.log.moves();
      const marked = new Set(moves.map(({ at }) => at));
      return {
        confidence,
        points: thinned(points, ({ at }) => marked.has(at)),
        moves: moves.map((move) => moveFor(role, move)),
      };
    },
  );

  app.get(
    '/api/builds/:build/forecasts',
    {
      config: { callers },
      schema: {
        summary: 'Forecasts as they were sent up, oldest first',
        params,
        response: { 200: ToldForecasts, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build } = request.params;
      if (!(await ledger.head(build))) return buildUnknown(reply);
      const told = await ledger.told(build, mostTold);
      return {
        told: told.flatMap(({ text }) => {
          const read = readTold(text);
          return read.kind === 'forecast' ? [read.frame] : [];
        }),
      };
    },
  );
}
