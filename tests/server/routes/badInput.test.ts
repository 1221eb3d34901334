import { beforeAll, describe, expect, it } from 'vitest';
import { formReader } from '#server/form.ts';
import type { RefusalReply } from '#shared/wire.ts';
import { OpenedBuild } from '#shared/wireBuilds.ts';
import {
  command,
  larchFordBridge,
  openRequest,
  openTestBuild,
  smallTables,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';

let server: TestServer;
let ford: TestBuild;
beforeAll(async () => {
  server = await testServer();
  ford = await openTestBuild(server);
});

const commands = () => `/api/builds/${ford.build}/commands`;

/** What must stay as it was, whatever was sent. */
async function allKept(): Promise<unknown> {
  const heads = await server.ledger.heads();
  return { heads, links: await server.ledger.links(ford.build) };
}

type Bad = {
  readonly what: string;
  readonly send: () => ReturnType<TestServer['ask']>;
  readonly status: number;
  readonly code: RefusalReply['code'];
  /** Part of a path or place that a fault must name. */
  readonly names?: string;
};

const open = (more: object) =>
  server.ask('POST', '/api/builds', server.hostSecret, { ...openRequest(server), ...more });

const tables = (tasks: string) => open({ source: { kind: 'tables', tasks } });

const raw = async (payload: string, type = 'application/json') => {
  const headers = { authorization: `Bearer ${ford.secret('left')}`, 'content-type': type };
  const reply = await server.app.inject({ method: 'POST', url: commands(), headers, payload });
  return { status: reply.statusCode, text: reply.body, headers: {}, json: JSON.parse(reply.body) };
};

const cases: readonly Bad[] = [
  {
    what: 'a field that nobody knows',
    send: () =>
      server.ask('POST', commands(), ford.secret('left'), {
        ...command(server, 'tell-near-miss', { what: 'x' }),
        mood: 'fine',
      }),
    status: 400,
    code: 'form-wrong',
    names: '/mood',
  },
  {
    what: 'a number as text',
    send: () =>
      server.ask('POST', `/api/builds/${ford.build}/proposals`, ford.secret('leader'), {
        changes: [{ kind: 'load', load: 'x', arrives: '12' }],
      }),
    status: 400,
    code: 'form-wrong',
    names: '/changes',
  },
  {
    what: 'no body at all',
    send: () => server.ask('POST', commands(), ford.secret('left')),
    status: 400,
    code: 'form-wrong',
  },
  {
    what: 'an id that is none',
    send: () =>
      server.ask('POST', commands(), ford.secret('left'), {
        ...command(server, 'halt', { why: '' }),
        id: 'one',
      }),
    status: 400,
    code: 'form-wrong',
    names: '/id',
  },
  {
    what: 'a time without its zone',
    send: () =>
      server.ask('POST', commands(), ford.secret('left'), {
        ...command(server, 'halt', { why: '' }),
        happenedAt: '2026-03-01T11:00:00',
      }),
    status: 400,
    code: 'form-wrong',
    names: '/happenedAt',
  },
  { what: 'JSON that breaks off', send: () => raw('{"id":'), status: 400, code: 'form-wrong' },
  {
    what: 'a body that is no JSON',
    send: () => raw('<command/>', 'text/xml'),
    status: 400,
    code: 'form-wrong',
  },
  {
    what: 'a body of 10 MB',
    send: () => raw(JSON.stringify({ id: 'x'.repeat(10_000_000) })),
    status: 413,
    code: 'too-large',
  },
  {
    what: 'a number of entries that is none',
    send: () => server.ask('GET', `/api/builds/${ford.build}/feed?after=-1`, ford.secret('leader')),
    status: 400,
    code: 'form-wrong',
    names: '/after',
  },
  {
    what: 'a build that is not there',
    send: () => server.ask('GET', '/api/builds/nowhere', ford.secret('leader')),
    status: 404,
    code: 'build-unknown',
  },
  {
    what: 'the host asking for links of a build that is not there',
    send: () => server.ask('GET', '/api/builds/nowhere/links', server.hostSecret),
    status: 404,
    code: 'build-unknown',
  },
  {
    what: 'an address that is none',
    send: () => server.ask('GET', '/api/tents', ford.secret('leader')),
    status: 404,
    code: 'route-unknown',
  },
  {
    what: 'a kit that is not here',
    send: () => server.ask('GET', '/api/kits/crane', ford.secret('leader')),
    status: 404,
    code: 'kit-unknown',
  },
  {
    what: 'a table without its required column',
    send: () => tables('task,name\r\npegs,Pegs'),
    status: 422,
    code: 'work-faulty',
    names: 'tasks',
  },
  {
    what: 'a table that goes in a circle',
    send: () => tables('task,likely,after\r\na,5,b\r\nb,5,a'),
    status: 422,
    code: 'work-faulty',
    names: 'after',
  },
  {
    what: 'a ground that was not measured',
    send: () => {
      const { gap: _gap, ...ground } = larchFordBridge.ground;
      return open({ source: { ...larchFordBridge, ground } });
    },
    status: 400,
    code: 'form-wrong',
    names: '/source',
  },
  {
    what: 'a gap that no bridge of the kit spans',
    send: () => {
      const ground = { ...larchFordBridge.ground, gap: 180 };
      return open({ source: { ...larchFordBridge, ground } });
    },
    status: 422,
    code: 'bridge-impossible',
  },
  {
    what: 'a chief without a crew',
    send: () =>
      server.ask('POST', `/api/builds/${ford.build}/links`, ford.secret('leader'), {
        role: 'chief',
        name: 'Nobody',
      }),
    status: 400,
    code: 'form-wrong',
  },
  {
    what: 'a chief of a crew that is not there',
    send: () =>
      server.ask('POST', `/api/builds/${ford.build}/links`, ford.secret('leader'), {
        role: 'chief',
        name: 'Nobody',
        crew: 'divers',
      }),
    status: 404,
    code: 'crew-unknown',
  },
  {
    what: 'the demo of a server that has none',
    send: () => server.ask('POST', '/api/demo', server.hostSecret, {}),
    status: 404,
    code: 'route-unknown',
  },
];

describe.each(cases)('$what', ({ send, status, code, names }) => {
  it('is answered with a code, a sentence and its place, and changes nothing', async () => {
    const before = await allKept();
    const answer = await send();
    const reply = answer.json as RefusalReply;
    expect([answer.status, reply.code]).toEqual([status, code]);
    expect(reply.sentence).toMatch(/^\S.*\.$/);
    if (names !== undefined) expect(JSON.stringify(reply.faults)).toContain(names);
    expect(await allKept()).toEqual(before);
  });
});

it('a large table is no large request: 1 MB of tables is read', async () => {
  const row = (place: number) => `task-${place},${'Carry '.repeat(18)},5`;
  const rows = Array.from({ length: 3000 }, (_, place) => row(place));
  const answer = await tables(['task,name,likely', ...rows].join('\r\n'));
  expect(answer.status, answer.text.slice(0, 300)).toBe(201);
  expect(formReader(OpenedBuild)(answer.json).ok).toBe(true);
});

it('what nobody expected is told without its details', async () => {
  const broken = await testServer({
    openDemo: async () => {
      throw new Error('the password is swordfish');
    },
  });
  const answer = await broken.ask<RefusalReply>('POST', '/api/demo', broken.hostSecret, {});
  expect([answer.status, answer.json.code]).toEqual([500, 'server-failed']);
  expect(answer.text).not.toContain('swordfish');
});

it('the small tables of these tests are what they should be', async () => {
  expect((await open({ source: smallTables })).status).toBe(201);
});
