import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { run } from '#server/commands/serve.ts';
import { ledgerFile } from '#server/ledger/ledgerFile.ts';
import { ownFolder } from '#server/ledger/ownFolder.ts';
import { openSqliteLedger } from '#server/ledger/sqliteLedger.ts';
import { secretOf } from '#tests/support/server.ts';
import { startServer } from '#tests/support/serverProcess.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-serve-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let count = 0;
const newData = () => {
  count += 1;
  return join(folder, `data-${count}`);
};

async function refused(args: string[]): Promise<{ code: number; errors: string[] }> {
  const errors: string[] = [];
  const code = await run(args, {
    out: () => {},
    err: (line) => errors.push(line),
    readFile: async () => '',
  });
  return { code, errors };
}

it('prints a link for each page of the demo build, one a line', async () => {
  const server = await startServer(['--port', '4432', '--data', newData(), '--demo']);
  const last = async () => {
    while (!server.lines.some((line) => line.startsWith('commander'))) {
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  };
  await last();
  const links = server.lines.slice(2);
  for (const page of ['leader', 'log', 'chief', 'inspector', 'commander']) {
    const line = links.find((each) => each.startsWith(page)) ?? '';
    const [, build] = /\/b\/([a-z0-9]+)\//.exec(line) ?? [];
    expect(line).toContain(`/b/${build}/${page}#`);
    const answer = await server.ask('GET', `/api/builds/${build}`, secretOf(line));
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text).you.role).toBe(page);
  }
  expect(await server.stop('SIGINT')).toBe(0);
}, 60_000);

it('says where it serves and how the host gets in; after a restart the host’s old link ends', async () => {
  const data = newData();
  const args = ['--port', '4431', '--data', data];
  const first = await startServer(args);
  expect(first.lines[0]).toMatch(
    /^Spanwright \d+\.\d+\.\d+ at http:\/\/127\.0\.0\.1:4431 \(SQLite 3\./,
  );
  const list = await first.ask('GET', '/api/builds', first.hostSecret);
  expect([list.status, list.text]).toEqual([200, '{"builds":[]}']);
  expect(await first.stop('SIGTERM')).toBe(0);

  const second = await startServer(args);
  expect((await second.ask('GET', '/api/builds', first.hostSecret)).status).toBe(401);
  expect((await second.ask('GET', '/api/builds', second.hostSecret)).status).toBe(200);
  await second.stop('SIGTERM');
  const ledger = await openSqliteLedger(join(data, ledgerFile));
  expect(JSON.stringify(await ledger.links(null))).not.toContain(second.hostSecret);
  await ledger.close();
}, 60_000);

it('says so when the port is taken, and leaves the data folder free', async () => {
  const other = createServer().listen(4434, '127.0.0.1');
  await once(other, 'listening');
  const data = newData();
  const { code, errors } = await refused(['--port', '4434', '--data', data]);
  other.close();
  expect(code).toBe(2);
  expect(errors).toEqual(['Port 4434 is taken. Stop what uses it, or choose another with --port.']);
  const owner = await ownFolder(data);
  expect(owner).not.toBeNull();
  owner?.release();
});

it('does not share a data folder with another server', async () => {
  const data = newData();
  const owner = await ownFolder(data);
  const { code, errors } = await refused(['--port', '4436', '--data', data]);
  owner?.release();
  expect([code, errors.length]).toEqual([2, 1]);
  expect(errors[0]).toContain('in use');
});

it.each([['--port', 'no'], ['--port', '70000'], ['--colour'], ['extra']])(
  'shows how it is used when given %s %s',
  async (...args) => {
    const { code, errors } = await refused(args.filter((word) => typeof word === 'string'));
    expect(code).toBe(2);
    expect(errors[0]).toMatch(/^spanwright serve/);
  },
);
