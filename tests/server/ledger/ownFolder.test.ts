import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { ownFolder } from '#server/ledger/ownFolder.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-own-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('gives a data folder to one owner at a time', async () => {
  const data = join(folder, 'data');
  const first = await ownFolder(data);
  expect(first).not.toBeNull();
  expect(await ownFolder(data)).toBeNull();
  first?.release();
  const next = await ownFolder(data);
  expect(next).not.toBeNull();
  next?.release();
});
