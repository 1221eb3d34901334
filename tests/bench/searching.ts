import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Proposal } from '#shared/wire.ts';
import type { OpenedBuild } from '#shared/wireBuilds.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { type ServerProcess, startServer } from '#tests/support/serverProcess.ts';
import { writeTables } from '#tests/support/writeTables.ts';

// How long other requests take while the server searches for a better plan of a crowded build, and while it does not:
// a snapshot and a report by turns, one every `pause` milliseconds, over real sockets against the built server.
// Run: npm run --silent bench:search

const seconds = 20;
const pause = 15;
const port = '4529';
const bar = 50;

const folder = mkdtempSync(join(tmpdir(), 'spanwright-bench-'));
const server = await startServer(['--data', folder, '--port', port]);
try {
  const work = randomWork(11, { tasks: 300, crews: 4, zones: 3, joint: true, keepOff: true });
  const { build, secrets } = await opened(server, writeTables(work));
  const [leader = ''] = secrets;
  await timed(server, build, secrets, 2);
  const quiet = await timed(server, build, secrets, seconds);
  const searched = server.ask('POST', `/api/builds/${build}/proposals`, leader, {
    changes: [],
    seconds: seconds + 5,
  });
  let over = false;
  void searched.then(() => {
    over = true;
  });
  const busy = await timed(server, build, secrets, seconds);
  if (over) throw new Error('the search ended before the requests did: take a harder build');
  const { status, text } = await searched;
  if (status !== 201) throw new Error(text);
  const { plan } = JSON.parse(text) as Proposal;
  console.log(`${availableParallelism()} cores; ${work.tasks.length} tasks; the search found`);
  console.log(`${plan.minutesToOpen.toFixed(1)} min, bound ${plan.lowerBound.toFixed(1)} min`);
  console.log('                 requests  p50 ms  p95 ms  p99 ms  max ms');
  row('no search', quiet);
  row('while it searches', busy);
  if (at(busy, 0.99) > bar) {
    console.error(`p99 is over ${bar} ms while it searches.`);
    process.exitCode = 1;
  }
} finally {
  await server.stop('SIGTERM');
  rmSync(folder, { recursive: true });
}

async function opened(to: ServerProcess, tables: ReturnType<typeof writeTables>) {
  const { status, text } = await to.ask('POST', '/api/builds', to.hostSecret, {
    id: randomBytes(16).toString('hex'),
    name: 'Bench crossing',
    unit: '1 Platoon',
    start: new Date().toISOString(),
    askedFor: null,
    zone: 'UTC',
    confidence: 0.9,
    source: {
      kind: 'tables',
      tasks: tables.tasks.text,
      links: tables.links.text,
      ...(tables.crews && { crews: tables.crews.text }),
    },
  });
  if (status !== 201) throw new Error(text);
  const { build, links } = JSON.parse(text) as OpenedBuild;
  // By turns from several links: the server counts the requests of each.
  const tellers = links.filter(({ role }) => ['leader', 'log', 'chief'].includes(role));
  return { build, secrets: tellers.map(({ address }) => address.split('#')[1] ?? '') };
}

async function timed(
  to: ServerProcess,
  build: string,
  secrets: readonly string[],
  howLong: number,
): Promise<number[]> {
  const times: number[] = [];
  const end = performance.now() + howLong * 1000;
  for (let turn = 0; performance.now() < end; turn += 1) {
    const secret = secrets[Math.floor(turn / 2) % secrets.length] ?? '';
    const begun = performance.now();
    const { status, text } = turn % 2 === 0 ? await look(secret) : await report(secret, turn);
    if (status !== 200) throw new Error(text);
    times.push(performance.now() - begun);
    await new Promise((resolve) => setTimeout(resolve, pause));
  }
  return times.sort((one, other) => one - other);

  function look(secret: string) {
    return to.ask('GET', `/api/builds/${build}`, secret);
  }

  function report(secret: string, turn: number) {
    const now = new Date().toISOString();
    return to.ask('POST', `/api/builds/${build}/commands`, secret, {
      id: randomBytes(16).toString('hex'),
      kind: 'tell-near-miss',
      body: { what: `strap ${turn} slipped` },
      happenedAt: now,
      sentAt: now,
    });
  }
}

function at(times: readonly number[], share: number): number {
  return times[Math.min(times.length - 1, Math.floor(times.length * share))] ?? Number.NaN;
}

function row(name: string, times: readonly number[]): void {
  const cells = [0.5, 0.95, 0.99, 1].map((share) => at(times, share).toFixed(1).padStart(8));
  console.log(name.padEnd(18) + String(times.length).padStart(7) + cells.join(''));
}
