import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { run } from '#server/commands/record.ts';
import { ledgerFile } from '#server/ledger/ledgerFile.ts';
import { ownFolder } from '#server/ledger/ownFolder.ts';
import { openSqliteLedger } from '#server/ledger/sqliteLedger.ts';
import { sqliteModule } from '#server/ledger/sqliteModule.ts';
import type { Receipt } from '#shared/wire.ts';
import { command, openTestBuild, type TestBuild, testServer } from '#tests/support/server.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-record-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let count = 0;
const newPath = (name: string) => {
  count += 1;
  return join(folder, `${count}-${name}`);
};

async function spanwrightRecord(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const io = {
    out: (line: string) => void out.push(line),
    err: (line: string) => void err.push(line),
    readFile: (path: string) => readFile(path, 'utf8'),
  };
  return { code: await run(args, io), out, err };
}

let data: string;
let ford: TestBuild;
let told: ReturnType<typeof command>;
let answer: string;

/** A data folder with one build of three entries, left as a stopped server leaves it. */
beforeEach(async () => {
  data = newPath('data');
  const owner = await ownFolder(data);
  const ledger = await openSqliteLedger(join(data, ledgerFile));
  const server = await testServer({ ledger });
  ford = await openTestBuild(server);
  const send = (request: unknown) =>
    server.ask<Receipt>('POST', `/api/builds/${ford.build}/commands`, ford.secret('left'), request);
  await send(command(server, 'tell-near-miss', { what: 'a “plank” slipped,\nnobody hurt' }));
  told = command(server, 'tell-started', { task: 'pegs', crew: 'left' });
  answer = (await send(told)).text;
  await server.app.close();
  await ledger.close();
  owner?.release();
});

describe('record verify', () => {
  it('finds that a record holds, and where it ends', async () => {
    const { code, out } = await spanwrightRecord('verify', '--data', data);
    expect(code).toBe(0);
    expect(out).toEqual([
      expect.stringMatching(new RegExp(`^build ${ford.build}: 3 entries hold, .*[0-9a-f]{64}$`)),
    ]);
  });

  it('names the first entry that was changed in the data folder', async () => {
    const { DatabaseSync } = await sqliteModule();
    const database = new DatabaseSync(join(data, ledgerFile));
    database.exec(`DROP TRIGGER entry_is_never_changed;
      UPDATE entry SET text = replace(text, 'slipped', 'flew') WHERE number = 2`);
    database.close();
    const { code, err } = await spanwrightRecord('verify', '--data', data);
    expect(code).toBe(2);
    expect(err).toEqual([expect.stringMatching(/entry 2 does not match its hash/)]);
  });

  it('notices entries cut off at the end of the data folder', async () => {
    const { DatabaseSync } = await sqliteModule();
    const database = new DatabaseSync(join(data, ledgerFile));
    database.exec('DROP TRIGGER entry_is_never_removed; DELETE FROM entry WHERE number = 3');
    database.close();
    const { code, err } = await spanwrightRecord('verify', '--data', data);
    expect([code, err.length]).toEqual([2, 1]);
    expect(err[0]).toContain('ends with entry 2');
  });

  it('says so when there are no records', async () => {
    const { code, err } = await spanwrightRecord('verify', '--data', newPath('nothing'));
    expect([code, err.length]).toEqual([2, 1]);
  });
});

describe('record export', () => {
  it('writes JSON lines with format and version, which verify accepts', async () => {
    const file = newPath('ford.jsonl');
    const { code, out } = await spanwrightRecord('export', ford.build, '--data', data);
    expect(code).toBe(0);
    writeFileSync(file, `${out.join('\n')}\n`);
    const lines = out.map((line) => JSON.parse(line));
    expect(lines[0]).toMatchObject({ line: 'head', format: 'spanwright-record', version: 1 });
    expect(lines.filter(({ line }) => line === 'entry')).toHaveLength(3);
    expect((await spanwrightRecord('verify', file)).code).toBe(0);
  });

  it('holds no secret, no hash of one and no receipt', async () => {
    const { out } = await spanwrightRecord('export', ford.build, '--data', data);
    const text = out.join('\n');
    expect(text).not.toContain('secretHash');
    expect(text).not.toContain('"line":"receipt"');
    expect(text).not.toContain(ford.secret('leader'));
  });

  it('of a build that is not there is refused', async () => {
    const { code, err } = await spanwrightRecord('export', 'nowhere', '--data', data);
    expect([code, err]).toEqual([2, [`There is no build "nowhere" in ${data}.`]]);
  });
});

describe('record backup and restore', () => {
  it('bring back entries, links and receipts: a device goes on as if nothing had happened', async () => {
    const file = newPath('backup.jsonl');
    expect((await spanwrightRecord('backup', '--data', data, '--to', file)).code).toBe(0);
    const other = newPath('data');
    const restored = await spanwrightRecord('restore', file, '--data', other);
    expect(restored).toMatchObject({ code: 0, err: [] });

    const ledger = await openSqliteLedger(join(other, ledgerFile));
    const server = await testServer({ ledger });
    const path = `/api/builds/${ford.build}/commands`;
    const again = await server.ask('POST', path, ford.secret('left'), told);
    expect(again.text).toBe(answer);
    await server.app.close();
    await ledger.close();
    const first = await spanwrightRecord('verify', '--data', data);
    expect((await spanwrightRecord('verify', '--data', other)).out).toEqual(first.out);
  });

  it('write no backup over another file', async () => {
    const file = newPath('backup.jsonl');
    writeFileSync(file, 'last week');
    expect((await spanwrightRecord('backup', '--data', data, '--to', file)).code).toBe(2);
    expect(readFileSync(file, 'utf8')).toBe('last week');
  });

  it('restore nothing over a build that is there', async () => {
    const file = newPath('backup.jsonl');
    await spanwrightRecord('backup', '--data', data, '--to', file);
    const { code, err } = await spanwrightRecord('restore', file, '--data', data);
    expect(code).toBe(2);
    expect(err[0]).toContain('here already');
  });

  it('leave a folder alone that a server is using', async () => {
    const file = newPath('backup.jsonl');
    await spanwrightRecord('backup', '--data', data, '--to', file);
    const used = newPath('data');
    const owner = await ownFolder(used);
    const { code, err } = await spanwrightRecord('restore', file, '--data', used);
    owner?.release();
    expect(code).toBe(2);
    expect(err[0]).toContain('in use');
  });

  it('can be taken while a server owns the folder', async () => {
    const owner = await ownFolder(data);
    const ledger = await openSqliteLedger(join(data, ledgerFile));
    expect((await spanwrightRecord('backup', '--data', data)).code).toBe(0);
    await ledger.close();
    owner?.release();
  });
});

describe('a record file that is not as it was written', () => {
  const changed: [string, (lines: string[]) => string[], RegExp][] = [
    [
      'a changed word',
      (lines) => lines.map((line) => line.replace('slipped', 'flew')),
      /entry 2 does not match/,
    ],
    [
      'a missing entry',
      (lines) => lines.filter((line) => !line.includes('"number":2,"hash"')),
      /row 5|lines before the end|entry 2/,
    ],
    ['a cut end', (lines) => lines.slice(0, -2), /the file is cut/],
    [
      'a line of something else',
      (lines) => [...lines.slice(0, 2), 'note,by,hand', ...lines.slice(2)],
      /row 3: found note,by,hand/,
    ],
    ['no head', (lines) => lines.slice(1), /one head, in the first line/],
    [
      'another format',
      (lines) => lines.map((line) => line.replace('spanwright-record', 'diary')),
      /row 1/,
    ],
    [
      'entries without their build',
      (lines) => lines.filter((line) => !line.includes('"line":"build"')),
      /its build line before it/,
    ],
    [
      'a newer version',
      (lines) => lines.map((line) => line.replace('"version":1', '"version":9')),
      /row 1/,
    ],
  ];

  it.each(changed)('with %s is refused, and nothing of it is restored', async (_, change, says) => {
    const { out } = await spanwrightRecord('export', ford.build, '--data', data);
    const file = newPath('bad.jsonl');
    writeFileSync(file, `${change(out).join('\n')}\n`);
    const verified = await spanwrightRecord('verify', file);
    expect(verified.code).toBe(2);
    expect(verified.err.join('\n')).toMatch(says);
    const other = newPath('data');
    expect((await spanwrightRecord('restore', file, '--data', other)).code).toBe(2);
    expect((await spanwrightRecord('verify', '--data', other)).code).toBe(2);
  });
});

it('shows how it is used when it is not told what to do', async () => {
  for (const args of [[], ['burn'], ['export'], ['verify', 'a', 'b'], ['verify', '--colour']]) {
    const { code, err } = await spanwrightRecord(...args);
    expect(code).toBe(2);
    expect(err[0]).toMatch(/^spanwright record verify/);
  }
});
