import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { makeHostLink } from '../access/links.ts';
import { buildApp } from '../app.ts';
import { demoOpener } from '../demo/openDemo.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { ledgerFile } from '../ledger/ledgerFile.ts';
import { ownFolder } from '../ledger/ownFolder.ts';
import { openSqliteLedger } from '../ledger/sqliteLedger.ts';
import { loadKits } from '../loadKits.ts';
import { keepKitsIn, withOwnKits } from '../ownKits.ts';
import { places, programVersion } from '../places.ts';
import { randomIds, systemClock } from '../ports.ts';
import type { App, OpenDemo } from '../site.ts';
import { threadsHavePriority } from '../workers/lowPriority.ts';
import { processSearcher } from '../workers/processSearcher.ts';
import { threadPlanner } from '../workers/threadPlanner.ts';
import { threadSearcher } from '../workers/threadSearcher.ts';
import { faultLine } from './faultLine.ts';
import type { CommandIo } from './io.ts';

const usage = 'spanwright serve [--port 4310] [--host 127.0.0.1] [--data ./data] [--demo]';

type Options = {
  readonly port: number;
  readonly host: string;
  readonly data: string;
  readonly demo: boolean;
};

const ports = { clock: systemClock, ids: randomIds };

/** `spanwright serve`: serves until it is told to stop by SIGINT or SIGTERM. */
export async function run(args: string[], io: CommandIo): Promise<number> {
  const options = readArgs(args);
  if (options === null) return fail(io, usage);
  const kits = await loadKits(places.kits);
  if (!kits.ok) {
    for (const fault of kits.reason) io.err(faultLine(fault));
    return 2;
  }
  const owner = await ownFolder(options.data);
  if (!owner)
    return fail(io, `${options.data} is in use by another server. Stop it, or use --data.`);
  const ownKits = join(options.data, 'kits');
  const known = await withOwnKits(kits.value, ownKits);
  for (const fault of known.faults) io.err(faultLine(fault));
  const ledger = await openSqliteLedger(join(options.data, ledgerFile));
  const planner = threadPlanner(places.workers);
  const searcher = (threadsHavePriority ? threadSearcher : processSearcher)(places.workers);
  try {
    const version = programVersion();
    const program = `spanwright ${version}`;
    const openDemo = demoOpener({ ...ports, ledger, planner, kits: known.kits, program });
    const app = await buildApp({
      ...ports,
      ledger,
      planner,
      searcher,
      kits: known.kits,
      keepKit: keepKitsIn(ownKits),
      version,
      openDemo,
      pages: existsSync(places.pages) ? places.pages : undefined,
      logger: { level: 'warn', redact: ['req.headers.authorization'], stream: process.stderr },
    });
    return await serve(app, { ledger, openDemo }, options, io);
  } finally {
    await Promise.all([planner.close(), searcher.close()]);
    await ledger.close();
    owner.release();
  }
}

function readArgs(args: string[]): Options | null {
  try {
    const { values } = parseArgs({
      args,
      options: {
        port: { type: 'string', default: '4310' },
        host: { type: 'string', default: '127.0.0.1' },
        data: { type: 'string', default: './data' },
        demo: { type: 'boolean', default: false },
      },
    });
    const port = /^\d{1,5}$/.test(values.port) ? Number(values.port) : Number.NaN;
    return port <= 65_535 ? { ...values, port } : null;
  } catch {
    return null;
  }
}

async function serve(
  app: App,
  { ledger, openDemo }: { readonly ledger: Ledger; readonly openDemo: OpenDemo },
  { port, host, data, demo }: Options,
  io: CommandIo,
): Promise<number> {
  const told = stopSignal();
  try {
    const origin = await app.listen({ port, host });
    io.out(`Spanwright ${programVersion()} at ${origin} (${ledger.about}, records in ${data})`);
    io.out(linkLine('host', origin, await freshHostLink(ledger)));
    if (demo) {
      const { links } = await openDemo('half-built');
      for (const { role, crew, address } of links) {
        io.out(linkLine(crew ? `${role} ${crew}` : role, origin, address));
      }
    }
    await told.stop;
    return 0;
  } catch (error) {
    if ((error as { code?: unknown }).code !== 'EADDRINUSE') throw error;
    return fail(io, `Port ${port} is taken. Stop what uses it, or choose another with --port.`);
  } finally {
    told.forget();
    await app.close();
  }
}

/** The host's link of this start; the one of the last start ends. Secrets are kept nowhere, so it cannot be shown again. */
async function freshHostLink(ledger: Ledger): Promise<string> {
  const now = ports.clock.now().toISOString();
  for (const { id } of await ledger.links(null)) await ledger.withdrawLink(id, now);
  const { stored, address } = makeHostLink(ports);
  await ledger.addLink(stored);
  return address;
}

function linkLine(page: string, origin: string, address: string): string {
  return `${page.padEnd(14)} ${origin}${address}`;
}

function stopSignal(): { readonly stop: Promise<void>; readonly forget: () => void } {
  let stopped = () => {};
  const stop = new Promise<void>((resolve) => {
    stopped = resolve;
  });
  process.once('SIGINT', stopped);
  process.once('SIGTERM', stopped);
  const forget = () => {
    process.off('SIGINT', stopped);
    process.off('SIGTERM', stopped);
  };
  return { stop, forget };
}

function fail(io: CommandIo, line: string): number {
  io.err(line);
  return 2;
}
