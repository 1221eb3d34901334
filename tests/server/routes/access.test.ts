import { beforeAll, describe, expect, it } from 'vitest';
import type { RefusalReply } from '#shared/wire.ts';
import {
  command,
  openRequest,
  openTestBuild,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';

type Who = 'leader' | 'log' | 'chief' | 'inspector' | 'commander' | 'host';
const everybody: readonly Who[] = ['leader', 'log', 'chief', 'inspector', 'commander', 'host'];
const everyRole = everybody.filter((who) => who !== 'host');

type Row = {
  readonly method: 'GET' | 'POST' | 'DELETE';
  readonly path: string;
  /** Who may use it, as the design has it. */
  readonly may: readonly Who[];
  readonly body?: () => unknown;
};

let server: TestServer;
let ford: TestBuild;
let weir: TestBuild;
beforeAll(async () => {
  server = await testServer();
  ford = await openTestBuild(server, { name: 'Ford' });
  weir = await openTestBuild(server, { name: 'Weir' });
});

const ofFord: readonly Row[] = [
  { method: 'GET', path: '', may: everyRole },
  // A number that lies ahead of the record is answered at once instead of with an endless feed.
  { method: 'GET', path: '/feed?after=999', may: everyRole },
  {
    method: 'POST',
    path: '/commands',
    may: ['leader', 'log', 'chief', 'inspector'],
    body: () => command(server, 'tell-near-miss', { what: 'a plank slipped' }),
  },
  { method: 'GET', path: '/record', may: ['leader', 'log', 'inspector'] },
  { method: 'GET', path: '/forecast', may: everyRole },
  { method: 'GET', path: '/stages', may: everyRole },
  { method: 'GET', path: '/stores', may: everyRole },
  { method: 'GET', path: '/forecasts', may: ['leader', 'log', 'inspector', 'commander'] },
  { method: 'GET', path: '/forecast/full', may: ['leader', 'log', 'inspector', 'commander'] },
  { method: 'GET', path: '/forecast/history', may: ['leader', 'log', 'inspector', 'commander'] },
  { method: 'POST', path: '/forecast/moves', may: ['leader'], body: () => ({}) },
  { method: 'DELETE', path: '/forecast/moves/none', may: ['leader'] },
  { method: 'GET', path: '/pace', may: ['leader'] },
  { method: 'GET', path: '/review', may: ['leader'] },
  { method: 'GET', path: '/review/tasks.csv', may: ['leader'] },
  {
    method: 'POST',
    path: '/review/kit',
    may: ['leader'],
    body: () => ({ name: 'own', tasks: ['bay'] }),
  },
  { method: 'POST', path: '/proposals', may: ['leader'], body: () => ({ changes: [] }) },
  { method: 'GET', path: `/proposals/${'0'.repeat(32)}`, may: ['leader'] },
  { method: 'POST', path: `/proposals/${'0'.repeat(32)}/take`, may: ['leader'] },
  { method: 'DELETE', path: `/proposals/${'0'.repeat(32)}`, may: ['leader'] },
  { method: 'GET', path: '/links', may: ['leader', 'host'] },
  {
    method: 'POST',
    path: '/links',
    may: ['leader', 'host'],
    body: () => ({ role: 'commander', name: 'Colonel' }),
  },
  { method: 'DELETE', path: '/links/none', may: ['leader', 'host'] },
  { method: 'POST', path: '/links/none/renewal', may: ['leader', 'host'] },
];

const ofServer: readonly Row[] = [
  { method: 'GET', path: '/api/kits', may: everybody },
  { method: 'GET', path: '/api/kits/heron', may: everybody },
  { method: 'POST', path: '/api/bridges', may: ['leader', 'host'], body: () => ({}) },
  { method: 'POST', path: '/api/bridges/times', may: ['leader', 'host'], body: () => ({}) },
  { method: 'GET', path: '/api/builds', may: ['host'] },
  { method: 'POST', path: '/api/builds', may: ['host'], body: () => openRequest(server) },
  { method: 'POST', path: '/api/demo', may: ['leader', 'host'], body: () => ({}) },
];

const pathOf = ({ path }: Row, build: string) =>
  path.startsWith('/api') ? path : `/api/builds/${build}${path}`;

function secretFor(who: Who, build: TestBuild): string {
  if (who === 'host') return server.hostSecret;
  return build.secret(who === 'chief' ? 'left' : who);
}

const codeOf = (json: unknown) => (json as RefusalReply | undefined)?.code;

describe.each([...ofFord, ...ofServer])('$method $path', (row) => {
  it.each(everybody)('lets the %s in only where the design does', async (who) => {
    const body = row.body?.();
    const path = pathOf(row, ford.build);
    const answer = await server.ask(row.method, path, secretFor(who, ford), body);
    const shut = answer.status === 403 && codeOf(answer.json) === 'role-cannot';
    expect(shut, answer.text.slice(0, 200)).toBe(!row.may.includes(who));
    expect(answer.status).not.toBe(401);
    expect(answer.status).toBeLessThan(500);
  });

  it('asks for a link', async () => {
    const answer = await server.ask(row.method, pathOf(row, ford.build), null, row.body?.());
    expect([answer.status, codeOf(answer.json)]).toEqual([401, 'link-unknown']);
  });

  it('refuses a link that was withdrawn', async () => {
    const { json: made } = await server.ask<{ id: string; address: string }>(
      'POST',
      `/api/builds/${ford.build}/links`,
      ford.secret('leader'),
      { role: 'leader', name: 'Second' },
    );
    const secret = made.address.split('#')[1] ?? '';
    const links = `/api/builds/${ford.build}/links`;
    await server.ask('DELETE', `${links}/${made.id}`, ford.secret('leader'));
    const answer = await server.ask(row.method, pathOf(row, ford.build), secret, row.body?.());
    expect([answer.status, codeOf(answer.json)]).toEqual([401, 'link-withdrawn']);
  });
});

describe.each(ofFord)('$method …$path with a link of another build', (row) => {
  it.each(everyRole)('is as if there were no such build, for the %s', async (who) => {
    const path = pathOf(row, ford.build);
    const answer = await server.ask(row.method, path, secretFor(who, weir), row.body?.());
    expect([answer.status, codeOf(answer.json)]).toEqual([404, 'build-unknown']);
  });
});

it('covers every route of the API but the two that are open to anyone', () => {
  const document = server.app.swagger() as { paths: Record<string, Record<string, unknown>> };
  const routes = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
  );
  const covered = [...ofFord, ...ofServer].map((row) => {
    const path = pathOf(row, '{build}')
      .replace(/\?.*/, '')
      .replace('/kits/heron', '/kits/{name}')
      .replace('/links/none', '/links/{link}')
      .replace('/moves/none', '/moves/{job}')
      .replace('/review/tasks.csv', '/review/{file}')
      .replace(/\/0{32}/, '/{proposal}');
    return `${row.method} ${path}`;
  });
  expect([...covered, 'GET /api/health'].sort()).toEqual(routes.sort());
});

it('tells anyone that the server lives and how its API looks, but nothing of a build', async () => {
  expect((await server.ask('GET', '/api/health', null)).status).toBe(200);
  const document = await server.ask('GET', '/api/openapi.json', null);
  expect(document.status).toBe(200);
  expect(document.text).not.toContain(ford.build);
});

it('stops an address that tries many unknown links, and lets known links through meanwhile', async () => {
  const tries = Array.from({ length: 121 }, (_, place) => `unknown-secret-${place}`);
  let last = 0;
  for (const secret of tries) last = (await server.ask('GET', '/api/kits', secret)).status;
  expect(last).toBe(429);
  expect((await server.ask('GET', '/api/kits', server.hostSecret)).status).toBe(200);
});
