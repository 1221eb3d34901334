import { beforeEach, expect, it } from 'vitest';
import type { LinkInfo, NewLink, RefusalReply } from '#shared/wire.ts';
import {
  openTestBuild,
  secretOf,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';

let server: TestServer;
let ford: TestBuild;
beforeEach(async () => {
  server = await testServer();
  ford = await openTestBuild(server);
});

const path = (rest = '') => `/api/builds/${ford.build}/links${rest}`;
const leader = () => ford.secret('leader');
const statusWith = async (secret: string) =>
  (await server.ask('GET', `/api/builds/${ford.build}`, secret)).status;

it('the list shows who has a link, but no secret and no hash of one', async () => {
  const answer = await server.ask<{ links: LinkInfo[] }>('GET', path(), leader());
  expect(answer.json.links.map(({ id }) => id)).toEqual(ford.links.map(({ id }) => id));
  for (const { address } of ford.links) expect(answer.text).not.toContain(secretOf(address));
  expect(answer.text).not.toMatch(/[0-9a-f]{64}/);
});

it('a link made by the leader works at once for the role it was made for', async () => {
  const request = { role: 'chief', name: 'Cpl Roke', crew: 'right' };
  const made = await server.ask<NewLink>('POST', path(), leader(), request);
  expect(made.status).toBe(201);
  expect(made.json).toMatchObject({ ...request, withdrawn: false });
  const own = await server.ask<{ you: unknown }>(
    'GET',
    `/api/builds/${ford.build}`,
    secretOf(made.json.address),
  );
  expect(own.json.you).toEqual({ role: 'chief', name: 'Cpl Roke', crew: 'right' });
});

it('a withdrawn link is refused from then on, and says that it was withdrawn', async () => {
  const log = ford.links.find(({ role }) => role === 'log');
  expect((await server.ask('DELETE', path(`/${log?.id}`), leader())).status).toBe(204);
  const answer = await server.ask<RefusalReply>(
    'GET',
    `/api/builds/${ford.build}`,
    ford.secret('log'),
  );
  expect([answer.status, answer.json.code]).toEqual([401, 'link-withdrawn']);
  const list = await server.ask<{ links: LinkInfo[] }>('GET', path(), leader());
  expect(list.json.links.find(({ id }) => id === log?.id)?.withdrawn).toBe(true);
});

it('a renewed link has another secret, and the old one ends', async () => {
  const chief = ford.links.find(({ crew }) => crew === 'left');
  const renewed = await server.ask<NewLink>('POST', path(`/${chief?.id}/renewal`), leader());
  expect(renewed.json).toMatchObject({ role: 'chief', crew: 'left', name: chief?.name });
  expect(await statusWith(secretOf(renewed.json.address))).toBe(200);
  expect(await statusWith(ford.secret('left'))).toBe(401);
});

it('a link of another build is not there to be withdrawn', async () => {
  const weir = await openTestBuild(server);
  const foreign = weir.links[0]?.id;
  const answer = await server.ask<RefusalReply>('DELETE', path(`/${foreign}`), leader());
  expect([answer.status, answer.json.code]).toEqual([404, 'link-not-found']);
  expect((await server.ask('GET', `/api/builds/${weir.build}`, weir.secret('leader'))).status).toBe(
    200,
  );
});

it('the ledger keeps hashes of secrets only', async () => {
  const kept = JSON.stringify(await server.ledger.links(ford.build));
  for (const { address } of ford.links) expect(kept).not.toContain(secretOf(address));
});

it('a secret in the address is no link: only the header counts', async () => {
  const url = `/api/builds/${ford.build}?secret=${leader()}`;
  expect((await server.ask('GET', url, null)).status).toBe(401);
  const reply = await server.app.inject({
    url: `/api/builds/${ford.build}`,
    headers: { authorization: leader() },
  });
  expect(reply.statusCode).toBe(401);
});
