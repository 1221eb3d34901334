import { Type } from 'typebox';
import { ForecastFrame, RefusalReply } from '#shared/wire.ts';
import { ToldForecasts } from '#shared/wireBuilds.ts';
import { everyRole } from '../access/gate.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';

const mostTold = 500;

/** GET .../forecast: the present one. GET .../forecasts: what was sent up, oldest first. */
export function forecastRoutes(app: App, { builds, ledger }: Site): void {
  app.get(
    '/api/builds/:build/forecast',
    {
      config: { callers: everyRole },
      schema: {
        summary: 'The present forecast, or why there is none',
        params: Type.Object({ build: Type.String() }),
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
    '/api/builds/:build/forecasts',
    {
      config: { callers: ['leader', 'log', 'inspector', 'commander'] },
      schema: {
        summary: 'Forecasts as they were sent up, oldest first',
        params: Type.Object({ build: Type.String() }),
        response: { 200: ToldForecasts, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { build } = request.params;
      if (!(await ledger.head(build))) return buildUnknown(reply);
      const told = await ledger.told(build, mostTold);
      return { told: told.map(({ text }) => JSON.parse(text) as ForecastFrame) };
    },
  );
}
