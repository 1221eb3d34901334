import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import fastify, { type FastifyServerOptions } from 'fastify';
import type { TSchema } from 'typebox';
import { guardRoutes } from './access/gate.ts';
import { compressReplies } from './compress.ts';
import { answerErrors, FormWrong } from './errors.ts';
import { formReader } from './form.ts';
import type { HashedKit } from './kits.ts';
import type { Ledger } from './ledger/ledger.ts';
import { withStorageFailures } from './ledger/storageFailures.ts';
import { LiveBuilds } from './live/liveBuilds.ts';
import { Proposals } from './live/proposals.ts';
import { describeApi, openApiRoute } from './openapi.ts';
import { type KeepKit, KitShelf } from './ownKits.ts';
import { servePages } from './pages.ts';
import type { Clock, Ids } from './ports.ts';
import { bridgeRoute } from './routes/bridges.ts';
import { buildRoutes } from './routes/builds.ts';
import { choiceTimesRoute } from './routes/choiceTimes.ts';
import { commandRoute } from './routes/commands.ts';
import { demoRoute } from './routes/demo.ts';
import { feedRoute } from './routes/feed.ts';
import { forecastRoutes } from './routes/forecasts.ts';
import { healthRoute } from './routes/health.ts';
import { kitRoutes } from './routes/kits.ts';
import { linkRoutes } from './routes/links.ts';
import { moveRoutes } from './routes/moves.ts';
import { paceRoute } from './routes/pace.ts';
import { proposalRoutes } from './routes/proposals.ts';
import { recordRoute } from './routes/record.ts';
import { reviewRoutes } from './routes/reviews.ts';
import { snapshotRoute } from './routes/snapshot.ts';
import { stagesRoute } from './routes/stages.ts';
import { storesRoute } from './routes/stores.ts';
import type { App, OpenDemo, Site } from './site.ts';
import type { Planner } from './workers/planner.ts';
import type { Searcher } from './workers/searcher.ts';

/** What the application needs from outside, and what of it can be set. */
export type AppOptions = {
  readonly clock: Clock;
  readonly ids: Ids;
  readonly ledger: Ledger;
  readonly planner: Planner;
  readonly searcher: Searcher;
  /** Own kits are added to them. */
  readonly kits: Map<string, HashedKit>;
  /** Keeps own kits; without it they last as long as the server runs. */
  readonly keepKit?: KeepKit;
  /** Version of this program. */
  readonly version: string;
  /** Folder of the built pages; without it only the API is served. */
  readonly pages?: string | undefined;
  readonly openDemo?: OpenDemo | undefined;
  readonly logger?: FastifyServerOptions['logger'];
  /** Runs of one forecast. */
  readonly runs?: number;
  /** Milliseconds that news is waited for before a forecast is begun. */
  readonly forecastWait?: number;
  /** Milliseconds after a forecast before it is asked what moved it. */
  readonly moveWait?: number;
  /** Milliseconds between two beats of a feed. */
  readonly beatEvery?: number;
  readonly requestsPerMinute?: number;
};

/** Builds the application; it listens to nothing yet. Closing it closes its feeds, not the ledger nor the workers. */
export async function buildApp(options: AppOptions): Promise<App> {
  const { clock, ids, planner, searcher, version, openDemo } = options;
  const shelf = new KitShelf(options.kits, options.keepKit ?? (async () => {}));
  const ledger = withStorageFailures(options.ledger);
  const app: App = fastify({
    logger: options.logger ?? false,
    bodyLimit: 256_000,
    requestTimeout: 30_000,
    // A feed beats far more often than this, and a plan is made in less.
    connectionTimeout: 180_000,
    forceCloseConnections: true,
  }).withTypeProvider<TypeBoxTypeProvider>();

  const proposals = new Proposals();
  const builds = new LiveBuilds(
    ledger,
    planner,
    clock,
    {
      runs: options.runs ?? 2000,
      wait: options.forecastWait ?? 100,
      moveWait: options.moveWait ?? 1500,
      onFailure: (error) => app.log.error({ err: error }, 'a forecast failed'),
    },
    {
      parts: { searcher, planner, proposals, clock, ids },
      options: {
        runs: options.runs ?? 2000,
        seconds: 5,
        every: 60_000,
        onFailure: (error) => app.log.error({ err: error }, 'a look for a better plan failed'),
      },
    },
  );
  const site: Site = {
    searcher,
    clock,
    ids,
    ledger,
    planner,
    kits: shelf.kits,
    shelf,
    builds,
    proposals,
    program: `spanwright ${version}`,
    runs: options.runs ?? 2000,
    openDemo,
  };

  checkForms(app);
  answerErrors(app);
  await protect(app, ledger, options.requestsPerMinute ?? 1200);
  compressReplies(app);
  await describeApi(app, version);

  openApiRoute(app);
  healthRoute(app, site);
  kitRoutes(app, site);
  bridgeRoute(app, site);
  choiceTimesRoute(app, site);
  buildRoutes(app, site);
  demoRoute(app, site);
  snapshotRoute(app, site);
  stagesRoute(app, site);
  storesRoute(app, site);
  feedRoute(app, site);
  commandRoute(app, site);
  recordRoute(app, site);
  forecastRoutes(app, site);
  moveRoutes(app, site);
  paceRoute(app, site);
  reviewRoutes(app, site);
  proposalRoutes(app, site);
  linkRoutes(app, site);
  await servePages(app, options.pages);

  const beat = setInterval(() => builds.beat(), options.beatEvery ?? 10_000).unref();
  const freshen = setInterval(() => builds.freshen(), 10_000).unref();
  const replan = setInterval(() => builds.replan(), 10_000).unref();
  app.addHook('preClose', async () => {
    clearInterval(beat);
    clearInterval(freshen);
    clearInterval(replan);
    builds.stop();
  });
  return app;
}

/**
 * One reader for all forms: nothing is coerced, nothing dropped, unknown fields are faults. Replies are documented by
 * their schemas and held to them by tests, but written as they are: a kept receipt must come back byte for byte.
 */
function checkForms(app: App): void {
  app.setValidatorCompiler(({ schema }) => {
    const read = formReader(schema as TSchema);
    return (value: unknown) => {
      const form = read(value);
      return form.ok ? { value: form.value } : { error: new FormWrong(form.reason) };
    };
  });
  app.setSerializerCompiler(() => (reply) => JSON.stringify(reply));
}

async function protect(app: App, ledger: Ledger, requestsPerMinute: number): Promise<void> {
  const self = ["'self'"];
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: self,
        baseUri: ["'none'"],
        formAction: self,
        frameAncestors: ["'none'"],
        objectSrc: ["'none'"],
      },
    },
    referrerPolicy: { policy: 'no-referrer' },
    // The server speaks plain HTTP, often on a network without the internet: a browser that remembered to insist
    // on HTTPS would be locked out, and the next two are ignored there with a warning.
    strictTransportSecurity: false,
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
  });
  app.addHook('onRequest', async (request, reply) => {
    if (request.url.startsWith('/api')) reply.header('cache-control', 'no-store');
  });
  await app.register(rateLimit, {
    max: requestsPerMinute,
    timeWindow: 60_000,
    // After the link was checked: one busy phone must not shut out the others behind the same address.
    hook: 'preParsing',
    keyGenerator: ({ caller, ip }) => caller?.link ?? ip,
    // Files of the pages are the same for all: a platoon's phones behind one address fetch many of them at once.
    allowList: ({ url }) => !url.startsWith('/api'),
  });
  guardRoutes(app, ledger);
}
