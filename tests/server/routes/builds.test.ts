import { beforeEach, expect, it } from 'vitest';
import type { RefusalReply, Snapshot } from '#shared/wire.ts';
import type { BuildListed, KitListed, OpenedBuild } from '#shared/wireBuilds.ts';
import {
  larchFordBridge,
  openRequest,
  openTestBuild,
  secretOf,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});

it('a build opened from tables has a link for each page, each chief by crew', async () => {
  const { links, build } = await openTestBuild(server);
  expect(links.map(({ role, crew }) => crew ?? role)).toEqual([
    'leader',
    'log',
    'left',
    'right',
    'inspector',
    'commander',
  ]);
  for (const { role, address } of links) {
    expect(address).toMatch(new RegExp(`^/b/${build}/${role}#[\\w-]{22,}$`));
  }
});

it('a build opened from a ground and a kit starts with its bridge and order of work', async () => {
  const { build, secret } = await openTestBuild(server, { source: larchFordBridge });
  const { json } = await server.ask<Snapshot>('GET', `/api/builds/${build}`, secret('leader'));
  expect(json.state.bridge?.kit.name).toBe('heron');
  expect(json.state.ground).toEqual(larchFordBridge.ground);
  expect(json.state.work.tasks.length).toBeGreaterThan(100);
  expect(json.you).toEqual({ role: 'leader', name: 'Leader' });
});

it('a build can be opened empty, to be filled by its leader', async () => {
  const { build, secret } = await openTestBuild(server, { source: { kind: 'empty' } });
  const { json } = await server.ask<Snapshot>('GET', `/api/builds/${build}`, secret('leader'));
  expect(json.state.work.tasks).toEqual([]);
});

it('the same request opens one build, also when it is sent twice at once', async () => {
  const request = openRequest(server);
  const send = () => server.ask<RefusalReply>('POST', '/api/builds', server.hostSecret, request);
  const answers = await Promise.all([send(), send()]);
  expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
  expect(answers.find(({ status }) => status === 409)?.json.code).toBe('build-exists');
  expect(await server.ledger.heads()).toHaveLength(1);
});

it('the host lists builds without seeing into them', async () => {
  const { build } = await openTestBuild(server, { name: 'Alder Weir' });
  const list = await server.ask<{ builds: BuildListed[] }>('GET', '/api/builds', server.hostSecret);
  expect(list.json.builds).toEqual([
    {
      build,
      name: 'Alder Weir',
      unit: '1 Platoon',
      start: '2026-03-01T11:00:00.000Z',
      zone: 'UTC',
      number: 1,
    },
  ]);
  expect((await server.ask('GET', `/api/builds/${build}`, server.hostSecret)).status).toBe(403);
});

it('the host helps a leader who lost the link', async () => {
  const { build, secret } = await openTestBuild(server);
  const made = await server.ask<{ address: string }>(
    'POST',
    `/api/builds/${build}/links`,
    server.hostSecret,
    { role: 'leader', name: 'Lt Venn' },
  );
  const answer = await server.ask<Snapshot>(
    'GET',
    `/api/builds/${build}`,
    secretOf(made.json.address),
  );
  expect(answer.json.you).toEqual({ role: 'leader', name: 'Lt Venn' });
  expect(secret('leader')).not.toBe(secretOf(made.json.address));
});

it('kits are listed with the hash of their text, and shown whole', async () => {
  const list = await server.ask<{ kits: KitListed[] }>('GET', '/api/kits', server.hostSecret);
  const heron = list.json.kits.find(({ name }) => name === 'heron');
  expect(heron).toMatchObject({ notForUse: true, hash: expect.stringMatching(/^[0-9a-f]{64}$/) });
  const whole = await server.ask<{ name: string }>('GET', '/api/kits/heron', server.hostSecret);
  expect(whole.json.name).toBe('heron');
});

it('a demo is opened as asked, half built unless said otherwise', async () => {
  const asked: string[] = [];
  const opened: OpenedBuild = { build: 'demo', links: [] };
  const withDemo = await testServer({
    openDemo: async (how) => {
      asked.push(how);
      return opened;
    },
  });
  const first = await withDemo.ask('POST', '/api/demo', withDemo.hostSecret, {});
  await withDemo.ask('POST', '/api/demo', withDemo.hostSecret, { how: 'fresh' });
  expect([first.status, first.json]).toEqual([201, opened]);
  expect(asked).toEqual(['half-built', 'fresh']);
});
