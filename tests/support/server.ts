import { createHash } from 'node:crypto';
import type { Ground } from '#domain/bridge/ground.ts';
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import type { CommandKind } from '#domain/progress/command.ts';
import { makeHostLink } from '#server/access/links.ts';
import { type AppOptions, buildApp } from '#server/app.ts';
import type { Ledger } from '#server/ledger/ledger.ts';
import { loadKits } from '#server/loadKits.ts';
import { places } from '#server/places.ts';
import type { Clock, Ids } from '#server/ports.ts';
import type { App } from '#server/site.ts';
import type { CommandRequest, NewLink } from '#shared/wire.ts';
import type { OpenedBuild, OpenRequest } from '#shared/wireBuilds.ts';
import { memoryLedger } from './serverMemoryLedger.ts';
import { plannerHere } from './serverPlanner.ts';
import { searcherHere } from './serverSearcher.ts';

/** A clock that stands still until a test moves it. */
export type TestClock = Clock & { advance(minutes: number): void };

export function testClock(start = '2026-03-01T11:00:00.000Z'): TestClock {
  let time = Date.parse(start);
  return {
    now: () => new Date(time),
    advance: (minutes) => {
      time += minutes * 60_000;
    },
  };
}

/** Ids that are the same in every run of a test, and never twice within one. */
export function testIds(): Ids {
  let count = 0;
  const next = (kind: string) => {
    count += 1;
    return createHash('sha256').update(`${kind} ${count}`).digest();
  };
  return {
    short: () => `b${next('short').toString('hex').slice(0, 9)}`,
    long: () => next('long').toString('hex').slice(0, 32),
    secret: () => next('secret').toString('base64url').slice(0, 24),
  };
}

/** What an answer said: its status, its exact text, and the text as JSON when it is JSON. */
export type Answer<Body = unknown> = {
  readonly status: number;
  readonly text: string;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly json: Body;
};

export type TestServer = {
  readonly app: App;
  readonly ledger: Ledger;
  readonly clock: TestClock;
  readonly ids: Ids;
  readonly hostSecret: string;
  /** Sends one request; `secret` null sends no link. */
  ask<Body = unknown>(
    method: 'GET' | 'POST' | 'DELETE',
    path: string,
    secret: string | null,
    body?: unknown,
  ): Promise<Answer<Body>>;
};

/** Reading a kit tries every gap it reaches: once for all tests of a file. */
const kitsRead = loadKits(places.kits);

/** A server in this process, with a host's link, on a ledger in memory unless given another. */
export async function testServer(options: Partial<AppOptions> = {}): Promise<TestServer> {
  const clock = testClock();
  const ids = testIds();
  const kits = await kitsRead;
  if (!kits.ok) throw new Error(JSON.stringify(kits.reason));
  const ledger = options.ledger ?? memoryLedger();
  const app = await buildApp({
    clock,
    ids,
    planner: plannerHere(),
    searcher: searcherHere(),
    kits: new Map(kits.value),
    version: '0.0.0-test',
    runs: 50,
    forecastWait: 0,
    requestsPerMinute: 100_000,
    ...options,
    ledger,
  });
  const host = makeHostLink({ clock, ids });
  await ledger.addLink(host.stored);
  return {
    app,
    ledger,
    clock,
    ids,
    hostSecret: secretOf(host.address),
    ask: async <Body>(
      method: 'GET' | 'POST' | 'DELETE',
      path: string,
      secret: string | null,
      body?: unknown,
    ) => {
      const reply = await app.inject({
        method,
        url: path,
        headers: secret === null ? {} : { authorization: `Bearer ${secret}` },
        ...(body !== undefined && { payload: body as object }),
      });
      const isJson = String(reply.headers['content-type']).startsWith('application/json');
      return {
        status: reply.statusCode,
        text: reply.body,
        headers: reply.headers,
        json: (isJson ? JSON.parse(reply.body) : undefined) as Body,
      };
    },
  };
}

/** The secret in the fragment of a link's address. */
export function secretOf(address: string): string {
  return address.split('#')[1] ?? '';
}

/** A small order of work: two crews, a keep-off move, a hold that opens. */
export const smallTables = {
  kind: 'tables',
  tasks: [
    'task,name,crews,people,quick,likely,slow,after,zones,keepoff,hold,opens',
    'pegs,Set out pegs,left,2-3-4,7,10,16,,near,,,',
    'panel,Carry the panel,right,4-6-6,3,4,7,,near,,,',
    'move,Move the bridge,left:4 right:4,,2,3,7,pegs panel,near,yes,,',
    'open,Last look,,,9,13,22,move,,,yes,yes',
  ].join('\r\n'),
  crews: [
    'crew,name,people,from,to,skills',
    'left,Left girder,7,,,',
    'right,Right girder,7,,,',
  ].join('\r\n'),
} as const;

/** A request that opens a build; what it starts from is the small tables unless said otherwise. */
export function openRequest(
  server: { readonly ids: Ids },
  more: Partial<OpenRequest> = {},
): OpenRequest {
  return {
    id: server.ids.long(),
    name: 'Test crossing',
    unit: '1 Platoon',
    start: '2026-03-01T11:00:00.000Z',
    askedFor: '2026-03-01T13:00:00.000Z',
    zone: 'UTC',
    confidence: 0.9,
    source: smallTables,
    ...more,
  };
}

/** The demo's ground with its kit. */
export const larchFordBridge = {
  kind: 'bridge',
  ground: larchFord as Ground,
  kit: 'heron',
} as const;

/** A build that was opened. `secret` finds the one of a role's link, or of a crew's chief. */
export type TestBuild = {
  readonly build: string;
  readonly links: readonly NewLink[];
  secret(who: string): string;
};

export async function openTestBuild(
  server: TestServer,
  more: Partial<OpenRequest> = {},
): Promise<TestBuild> {
  const request = openRequest(server, more);
  const opened = await server.ask<OpenedBuild>('POST', '/api/builds', server.hostSecret, request);
  if (opened.status !== 201) throw new Error(opened.text);
  const { build, links } = opened.json;
  const secret = (who: string) => {
    const link = links.find(({ role, crew }) => (crew ?? role) === who);
    if (!link) throw new Error(`the build has no link for ${who}`);
    return secretOf(link.address);
  };
  return { build, links, secret };
}

/** A command as a device whose clock is right sends it now. */
export function command(
  server: { readonly clock: Clock; readonly ids: Ids },
  kind: Exclude<CommandKind, 'open-build'>,
  body: unknown,
  more: Partial<CommandRequest> = {},
): CommandRequest {
  const now = server.clock.now().toISOString();
  return { id: server.ids.long(), kind, body, happenedAt: now, sentAt: now, ...more };
}
