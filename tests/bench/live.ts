import { execFileSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Receipt, Snapshot } from '#shared/wire.ts';
import { secretOf } from '#tests/support/server.ts';
import { openTestFeed } from '#tests/support/serverFeed.ts';
import { startServer } from '#tests/support/serverProcess.ts';

// From a report to the new forecast at the boards: the server as users start it with the half-built demo, 2,000 runs a
// forecast, boards that read its feed over loopback as the pages do, reports one after another. Measured from sending the
// report until each board has read the forecast that knows of it. Everything shares the machine, boards included.

const boards = 20;
const reports = 25;
/** Milliseconds between two reports: long enough that each is forecast alone, and what moved it is looked at in some. */
const pauses = [900, 1300, 1900];

export type LiveTimes = {
  readonly boards: number;
  readonly reports: number;
  /** Milliseconds. */
  readonly p50: number;
  readonly p95: number;
  readonly most: number;
};

/** Runs for about a minute at most and leaves nothing behind. */
export async function timeLive(): Promise<LiveTimes> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  execFileSync(process.execPath, [join(root, 'server', 'start', 'build.mjs')], { stdio: 'ignore' });
  const data = mkdtempSync(join(tmpdir(), 'spanwright-bench-'));
  const server = await startServer(['--port', '0', '--data', data, '--demo']);
  try {
    return await measure(server);
  } finally {
    await server.stop('SIGKILL');
    rmSync(data, { recursive: true, force: true });
  }
}

type Server = Awaited<ReturnType<typeof startServer>>;

async function measure(server: Server): Promise<LiveTimes> {
  const leader = await printed(server, 'leader');
  const watchers = await Promise.all(
    ['leader', 'commander', 'inspector', 'log'].map((who) => printed(server, who)),
  );
  const { json: listed } = await ask<{ builds: { build: string }[] }>(
    server,
    '/api/builds',
    server.hostSecret,
  );
  const path = `/api/builds/${listed.builds[0]!.build}`;
  const { json: snapshot } = await ask<Snapshot>(server, path, leader);
  const { number, work, tasks } = snapshot.state;
  const feeds = await Promise.all(
    Array.from({ length: boards }, (_, board) =>
      openTestFeed(`${server.origin}${path}/feed?after=${number}`, watchers[board % 4]!),
    ),
  );
  const running = work.tasks.find(({ id }) => tasks[id]?.status === 'at-work')!;
  const crew = tasks[running.id]!.shares[0]!.crew;
  // The first makes the threads; it is not counted.
  const times: number[] = [];
  for (let report = 0; report <= reports; report++) {
    await new Promise((resolve) => setTimeout(resolve, pauses[report % pauses.length]));
    const sent = performance.now();
    const kind = report % 2 === 0 ? 'tell-stopped' : 'tell-resumed';
    const why = report % 2 === 0 ? { why: 'waits for a pin' } : {};
    const entry = await tell(server, path, leader, kind, { task: running.id, crew, ...why });
    const at = await Promise.all(
      feeds.map(async (feed) => {
        await feed.until(
          ({ event, data }) => event === 'forecast' && (data as { number: number }).number >= entry,
        );
        return performance.now() - sent;
      }),
    );
    if (report > 0) times.push(...at);
  }
  for (const feed of feeds) feed.close();
  times.sort((one, other) => one - other);
  const share = (p: number) => times[Math.ceil(p * times.length) - 1]!;
  return { boards, reports, p50: share(0.5), p95: share(0.95), most: share(1) };
}

async function tell(
  server: Server,
  path: string,
  secret: string,
  kind: string,
  body: unknown,
): Promise<number> {
  const now = new Date().toISOString();
  const id = randomBytes(16).toString('hex');
  const command = { id, kind, body, happenedAt: now, sentAt: now };
  const { json } = await ask<Receipt>(server, `${path}/commands`, secret, command);
  if (json.outcome !== 'recorded') throw new Error(json.sentence);
  return json.entry;
}

async function ask<Body>(server: Server, path: string, secret: string, body?: unknown) {
  const { text } = await server.ask(body === undefined ? 'GET' : 'POST', path, secret, body);
  return { json: JSON.parse(text) as Body };
}

/** The secret of a link that the server prints once the demo is there. */
async function printed({ lines }: Server, who: string): Promise<string> {
  for (let tries = 0; tries < 600; tries++) {
    const line = lines.find((each) => each.startsWith(`${who} `));
    if (line) return secretOf(line);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`the server printed no link for ${who}`);
}
