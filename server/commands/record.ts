import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type BuildInFile, readRecordFile } from '../backup/readRecordFile.ts';
import { recordFileLines } from '../backup/writeRecordFile.ts';
import { firstBadEntry } from '../ledger/chain.ts';
import type { Head, Ledger } from '../ledger/ledger.ts';
import { ledgerFile } from '../ledger/ledgerFile.ts';
import { ownFolder } from '../ledger/ownFolder.ts';
import { openSqliteLedger, readSqliteLedger } from '../ledger/sqliteLedger.ts';
import { programVersion } from '../places.ts';
import { faultLine } from './faultLine.ts';
import type { CommandIo } from './io.ts';

const usage = [
  'spanwright record verify [FILE] [--data DIR]     recompute every hash, of a file or of the data folder',
  'spanwright record export BUILD [--to FILE]       the record of one build as JSON lines',
  'spanwright record backup [--to FILE]             every build with receipts, links and forecasts told',
  'spanwright record restore FILE [--data DIR]      bring builds back from an export or a backup',
];

type Options = { readonly data: string; readonly to: string | undefined };

/** `spanwright record verify|export|backup|restore`. */
export async function run(args: string[], io: CommandIo): Promise<number> {
  const read = readArgs(args);
  if (read === null) return fail(io, usage);
  const { what, given, options } = read;
  if (what === 'verify' && given !== undefined) return verifyFile(given, io);
  if (what === 'verify') return withLedger(options, io, (ledger) => verifyLedger(ledger, io));
  if (what === 'export' && given !== undefined) {
    return withLedger(options, io, async (ledger) => {
      const head = await ledger.head(given);
      if (!head) return fail(io, [`There is no build "${given}" in ${options.data}.`]);
      return write(ledger, [head], false, options, io);
    });
  }
  if (what === 'backup' && given === undefined) {
    return withLedger(options, io, async (ledger) =>
      write(ledger, await ledger.heads(), true, options, io),
    );
  }
  if (what === 'restore' && given !== undefined) return restore(given, options, io);
  return fail(io, usage);
}

function readArgs(
  args: string[],
): { what: string | undefined; given: string | undefined; options: Options } | null {
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: { data: { type: 'string', default: './data' }, to: { type: 'string' } },
    });
    const [what, given, ...more] = positionals;
    return more.length > 0 ? null : { what, given, options: { data: values.data, to: values.to } };
  } catch {
    return null;
  }
}

/** Reads the ledger of the data folder, also while a server owns it. */
async function withLedger(
  { data }: Options,
  io: CommandIo,
  work: (ledger: Ledger) => Promise<number>,
): Promise<number> {
  let ledger: Ledger;
  try {
    ledger = await readSqliteLedger(join(data, ledgerFile));
  } catch (error) {
    return fail(io, [`${data}: no records can be read here (${messageOf(error)}).`]);
  }
  try {
    return await work(ledger);
  } finally {
    await ledger.close();
  }
}

async function verifyFile(path: string, io: CommandIo): Promise<number> {
  const builds = await readFile(path, io);
  if (builds === null) return 2;
  for (const { head } of builds) io.out(holds(head));
  return 0;
}

async function verifyLedger(ledger: Ledger, io: CommandIo): Promise<number> {
  let faults = 0;
  for (const head of await ledger.heads()) {
    // One more than the head says: an entry beyond it is a fault too.
    const entries = await ledger.entries(head.build, 0, head.number + 1);
    const last = entries.at(-1);
    const broken =
      firstBadEntry(entries)?.sentence ??
      (entries.length > 0 && (last?.number !== head.number || last.hash !== head.hash)
        ? `the record ends with entry ${last?.number}, not with ${head.number} as it should`
        : null);
    if (broken === null) io.out(holds(head));
    else {
      faults += 1;
      io.err(`build ${head.build}: ${broken}`);
    }
  }
  return faults === 0 ? 0 : 2;
}

function holds({ build, number, hash }: Head): string {
  return `build ${build}: ${number} entries hold, the last has hash ${hash}`;
}

async function write(
  ledger: Ledger,
  heads: readonly Head[],
  whole: boolean,
  { to }: Options,
  io: CommandIo,
): Promise<number> {
  const about = {
    program: `spanwright ${programVersion()}`,
    writtenAt: new Date().toISOString(),
    whole,
  };
  const lines = recordFileLines(ledger, heads, about);
  if (to === undefined) {
    for await (const line of lines) io.out(line);
    return 0;
  }
  try {
    // Fails when the file exists: a backup is not written over another.
    await writeFile(to, withLineFeeds(lines), { flag: 'wx', flush: true });
  } catch (error) {
    return fail(io, [`${to}: could not be written (${messageOf(error)}).`]);
  }
  io.out(`${to}: ${heads.length} ${heads.length === 1 ? 'build' : 'builds'} written`);
  return 0;
}

async function* withLineFeeds(lines: AsyncIterable<string>): AsyncGenerator<string> {
  for await (const line of lines) yield `${line}\n`;
}

async function restore(path: string, { data }: Options, io: CommandIo): Promise<number> {
  const builds = await readFile(path, io);
  if (builds === null) return 2;
  const owner = await ownFolder(data);
  if (!owner) return fail(io, [`${data} is in use by a running server. Stop it first.`]);
  try {
    const ledger = await openSqliteLedger(join(data, ledgerFile));
    try {
      return await restoreInto(ledger, builds, io);
    } finally {
      await ledger.close();
    }
  } finally {
    owner.release();
  }
}

async function restoreInto(
  ledger: Ledger,
  builds: readonly BuildInFile[],
  io: CommandIo,
): Promise<number> {
  for (const { head } of builds) {
    if (await ledger.head(head.build)) {
      const sentence = `Build ${head.build} is here already; nothing was restored. Use another --data folder.`;
      return fail(io, [sentence]);
    }
  }
  for (const { kept, head } of builds) {
    await ledger.restore(kept);
    const links = kept.links.length === 0 ? '; make links for it from the host page' : '';
    io.out(`build ${head.build}: ${head.number} entries restored${links}`);
  }
  return 0;
}

async function readFile(path: string, io: CommandIo): Promise<readonly BuildInFile[] | null> {
  let text: string;
  try {
    text = await io.readFile(path);
  } catch (error) {
    fail(io, [`${path}: cannot be read (${messageOf(error)}).`]);
    return null;
  }
  const read = readRecordFile(text, path);
  if (read.ok) return read.value;
  fail(io, read.reason.map(faultLine));
  return null;
}

function fail(io: CommandIo, lines: readonly string[]): number {
  for (const line of lines) io.err(line);
  return 2;
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
