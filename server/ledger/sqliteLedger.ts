import { chain, chainStart } from './chain.ts';
import {
  type Batch,
  type Head,
  type KeptBuild,
  type Ledger,
  LedgerConflict,
  type StoredEntry,
  type StoredLink,
  type StoredReceipt,
  type ToldForecast,
} from './ledger.ts';
import { type Database, sqliteModule } from './sqliteModule.ts';
import { migrate, refuseOtherSchema } from './sqliteSchema.ts';

const linkColumns =
  'id, build, role, name, crew, secret_hash AS secretHash, made_at AS madeAt, withdrawn_at AS withdrawnAt';

/**
 * Opens (or makes) the ledger in one SQLite file. Every commit is on the disk when its promise resolves.
 * Throws when the file cannot be opened, is of a newer release, or does not sync as asked.
 */
export async function openSqliteLedger(path: string): Promise<Ledger> {
  const { DatabaseSync } = await sqliteModule();
  const database = new DatabaseSync(path);
  try {
    const version = prepareConnection(database);
    migrate(database);
    return ledgerOn(database, `SQLite ${version}`);
  } catch (error) {
    database.close();
    throw error;
  }
}

/**
 * Opens a ledger to read it as it is at this moment, while its owner may go on writing. Nothing is changed, not even
 * an older schema: the file is refused then. Throws when there is no such file.
 */
export async function readSqliteLedger(path: string): Promise<Ledger> {
  const { DatabaseSync } = await sqliteModule();
  const database = new DatabaseSync(path, { readOnly: true });
  try {
    database.exec('PRAGMA busy_timeout = 2000');
    refuseOtherSchema(database);
    // One transaction for all that is read: receipts and entries of the same moment.
    database.exec('BEGIN');
    return ledgerOn(database, 'SQLite, to read');
  } catch (error) {
    database.close();
    throw error;
  }
}

/** Some builds of SQLite take WAL to mean "sync now and then": asked for and checked on the connection itself. */
function prepareConnection(database: Database): string {
  database.exec('PRAGMA busy_timeout = 2000; PRAGMA foreign_keys = ON');
  const mode = database.prepare('PRAGMA journal_mode = WAL').get() as { journal_mode: string };
  database.exec('PRAGMA synchronous = FULL');
  const { synchronous } = database.prepare('PRAGMA synchronous').get() as { synchronous: number };
  if (mode.journal_mode !== 'wal' || synchronous !== 2) {
    throw new Error(
      `The ledger cannot promise that acknowledged entries are kept (journal ${mode.journal_mode}, synchronous ${synchronous}).`,
    );
  }
  const { version } = database.prepare('SELECT sqlite_version() AS version').get() as {
    version: string;
  };
  return version;
}

function ledgerOn(database: Database, about: string): Ledger {
  const sql = {
    heads: database.prepare('SELECT build, number, hash FROM build ORDER BY rowid'),
    head: database.prepare('SELECT build, number, hash FROM build WHERE build = ?'),
    newBuild: database.prepare('INSERT INTO build (build, number, hash) VALUES (?, 0, ?)'),
    moveHead: database.prepare('UPDATE build SET number = ?, hash = ? WHERE build = ?'),
    addEntry: database.prepare('INSERT INTO entry (build, number, text, hash) VALUES (?, ?, ?, ?)'),
    entries: database.prepare(
      'SELECT number, text, hash FROM entry WHERE build = ? AND number > ? ORDER BY number LIMIT ?',
    ),
    addReceipt: database.prepare(
      'INSERT INTO receipt (build, id, request, status, text) VALUES (?, ?, ?, ?, ?)',
    ),
    receipt: database.prepare(
      'SELECT id, request, status, text FROM receipt WHERE build = ? AND id = ?',
    ),
    receipts: database.prepare(
      'SELECT id, request, status, text FROM receipt WHERE build = ? ORDER BY rowid',
    ),
    links: database.prepare(`SELECT ${linkColumns} FROM link WHERE build IS ? ORDER BY rowid`),
    linkWithHash: database.prepare(`SELECT ${linkColumns} FROM link WHERE secret_hash = ?`),
    addLink: database.prepare(
      'INSERT INTO link (id, build, role, name, crew, secret_hash, made_at, withdrawn_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?)',
    ),
    withdrawLink: database.prepare(
      'UPDATE link SET withdrawn_at = ? WHERE id = ? AND withdrawn_at IS NULL',
    ),
    keepTold: database.prepare('INSERT INTO told (build, number, at, text) VALUES (?, ?, ?, ?)'),
    told: database.prepare(
      'SELECT number, at, text FROM (SELECT * FROM told WHERE build = ? ORDER BY place DESC LIMIT ?) ORDER BY place',
    ),
  };

  const headOf = (build: string) => (sql.head.get(build) as Head | undefined) ?? null;

  const addLink = (link: StoredLink) => {
    const { id, build, role, name, crew, secretHash, madeAt, withdrawnAt } = link;
    sql.addLink.run(id, build, role, name, crew, secretHash, madeAt, withdrawnAt);
  };

  const addReceipt = (build: string, { id, request, status, text }: StoredReceipt) =>
    sql.addReceipt.run(build, id, request, status, text);

  const addTold = (build: string, { number, at, text }: ToldForecast) =>
    sql.keepTold.run(build, number, at, text);

  const restore = ({ build, texts, receipts, links, told }: KeptBuild): Head => {
    sql.newBuild.run(build, chainStart);
    const head = addEntries({ build, number: 0, hash: chainStart }, texts);
    for (const receipt of receipts) addReceipt(build, receipt);
    for (const link of links) addLink(link);
    for (const forecast of told) addTold(build, forecast);
    return head;
  };

  const addEntries = (head: Head, texts: readonly string[]): Head => {
    const { build } = head;
    const entries = chain(head, texts);
    for (const { number, text, hash } of entries) sql.addEntry.run(build, number, text, hash);
    const { number, hash } = entries.at(-1) ?? head;
    sql.moveHead.run(number, hash, build);
    return { build, number, hash };
  };

  const append = ({ build, after, texts, receipt, links = [] }: Batch): Head => {
    const known = headOf(build);
    const head = known ?? { build, number: 0, hash: chainStart };
    if (head.number !== after) {
      throw new LedgerConflict(`decided on entry ${after} of ${build}, which is at ${head.number}`);
    }
    if (!known) sql.newBuild.run(build, head.hash);
    const next = addEntries(head, texts);
    addReceipt(build, receipt);
    for (const link of links) addLink(link);
    return next;
  };

  const inTransaction = <Value>(work: () => Value): Value => {
    database.exec('BEGIN IMMEDIATE');
    try {
      const value = work();
      database.exec('COMMIT');
      return value;
    } catch (error) {
      try {
        database.exec('ROLLBACK');
      } catch {
        // A COMMIT that failed may have ended the transaction already.
      }
      throw error;
    }
  };

  return {
    about,
    heads: async () => sql.heads.all() as Head[],
    head: async (build) => headOf(build),
    append: async (batch) => inTransaction(() => append(batch)),
    entries: async (build, after, limit) => sql.entries.all(build, after, limit) as StoredEntry[],
    receipt: async (build, id) => (sql.receipt.get(build, id) as StoredReceipt | undefined) ?? null,
    receipts: async (build) => sql.receipts.all(build) as StoredReceipt[],
    links: async (build) => sql.links.all(build) as StoredLink[],
    linkWithHash: async (hash) => (sql.linkWithHash.get(hash) as StoredLink | undefined) ?? null,
    addLink: async (link) => addLink(link),
    withdrawLink: async (id, at) => Number(sql.withdrawLink.run(at, id).changes) === 1,
    keepTold: async (build, forecast) => {
      addTold(build, forecast);
    },
    restore: async (kept) => inTransaction(() => restore(kept)),
    told: async (build, limit) => sql.told.all(build, limit) as ToldForecast[],
    close: async () => database.close(),
  };
}
