import type { IncomingMessage, ServerResponse } from 'node:http';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import type { FastifyBaseLogger, FastifyInstance, RawServerDefault } from 'fastify';
import type { OpenedBuild } from '#shared/wireBuilds.ts';
import type { Kits } from './kits.ts';
import type { Ledger } from './ledger/ledger.ts';
import type { LiveBuilds } from './live/liveBuilds.ts';
import type { Proposals } from './live/proposals.ts';
import type { KitShelf } from './ownKits.ts';
import type { Clock, Ids } from './ports.ts';
import type { Planner } from './workers/planner.ts';
import type { Searcher } from './workers/searcher.ts';

/** Starts a demo build: as it is before the first plan is told to anyone, or half built. */
export type OpenDemo = (how: 'fresh' | 'half-built') => Promise<OpenedBuild>;

/** What the routes work with. */
export type Site = {
  readonly clock: Clock;
  readonly ids: Ids;
  readonly ledger: Ledger;
  readonly planner: Planner;
  readonly searcher: Searcher;
  readonly kits: Kits;
  /** Where a kit of one's own is added to them. */
  readonly shelf: KitShelf;
  readonly builds: LiveBuilds;
  readonly proposals: Proposals;
  /** Name and version of this program, for the record. */
  readonly program: string;
  /** Runs of one forecast. */
  readonly runs: number;
  readonly openDemo?: OpenDemo | undefined;
};

/** The web application, typed by the schemas of its routes. */
export type App = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  TypeBoxTypeProvider
>;
