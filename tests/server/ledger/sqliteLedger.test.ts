import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openSqliteLedger } from '#server/ledger/sqliteLedger.ts';
import { sqliteModule } from '#server/ledger/sqliteModule.ts';
import { entryText, ledgerContract, receiptFor } from '#tests/support/ledgerContract.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-ledger-'));
let files = 0;
const newFile = () => {
  files += 1;
  return join(folder, `${files}.sqlite`);
};
afterAll(() => rmSync(folder, { recursive: true, force: true }));

ledgerContract('SQLite', () => openSqliteLedger(newFile()));

describe('the SQLite ledger', () => {
  const opened = {
    build: 'ford',
    after: 0,
    texts: [entryText(1), entryText(2)],
    receipt: receiptFor('open'),
  };

  it('says which SQLite keeps the records', async () => {
    const ledger = await openSqliteLedger(newFile());
    expect(ledger.about).toMatch(/^SQLite 3\.\d+\.\d+$/);
    await ledger.close();
  });

  it('finds everything again after it was closed', async () => {
    const file = newFile();
    const first = await openSqliteLedger(file);
    const head = await first.append(opened);
    await first.close();
    const second = await openSqliteLedger(file);
    expect(await second.head('ford')).toEqual(head);
    expect(await second.receipt('ford', 'open')).toEqual(opened.receipt);
    await second.close();
  });

  it('lets nobody rewrite or remove an entry, not even with SQL', async () => {
    const file = newFile();
    const ledger = await openSqliteLedger(file);
    await ledger.append(opened);
    const { DatabaseSync } = await sqliteModule();
    const other = new DatabaseSync(file);
    expect(() => other.exec("UPDATE entry SET text = '{}' WHERE number = 1")).toThrow(/never/);
    expect(() => other.exec('DELETE FROM entry')).toThrow(/never/);
    other.close();
    await ledger.close();
  });

  it('refuses a file that a newer release wrote and leaves it as it is', async () => {
    const file = newFile();
    const { DatabaseSync } = await sqliteModule();
    const newer = new DatabaseSync(file);
    newer.exec('PRAGMA user_version = 99');
    newer.close();
    await expect(openSqliteLedger(file)).rejects.toThrow(/newer release/);
    const again = new DatabaseSync(file);
    expect(again.prepare('PRAGMA user_version').get()).toMatchObject({ user_version: 99 });
    again.close();
  });

  it('does not open a place where the log cannot be kept as asked', async () => {
    await expect(openSqliteLedger(':memory:')).rejects.toThrow(/cannot promise/);
  });
});
