import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { firstBadEntry } from '#server/ledger/chain.ts';
import { randomIds, systemClock } from '#server/ports.ts';
import type { RecordPage } from '#shared/wireBuilds.ts';
import { command, openRequest, secretOf } from '#tests/support/server.ts';
import { type ServerProcess, startServer } from '#tests/support/serverProcess.ts';

const data = mkdtempSync(join(tmpdir(), 'spanwright-kill-'));
let running: ServerProcess | null = null;
afterAll(async () => {
  await running?.stop('SIGKILL');
  rmSync(data, { recursive: true, force: true });
});

const devices = { clock: systemClock, ids: randomIds };
const start = async () => {
  running = await startServer(['--port', '4430', '--data', data]);
  return running;
};

type Sent = { readonly id: string; readonly request: unknown; answer: string | null };

it('a server killed while tells come in loses none that it acknowledged, and doubles none', async () => {
  let server = await start();
  const opening = openRequest(devices);
  const opened = await server.ask('POST', '/api/builds', server.hostSecret, opening);
  const { build, links } = JSON.parse(opened.text);
  const leader = secretOf(links[0].address);
  const path = `/api/builds/${build}`;
  const all: Sent[] = [];

  const send = async (sent: Sent): Promise<void> => {
    const answer = await server.ask('POST', `${path}/commands`, leader, sent.request);
    expect(answer.status).toBe(200);
    sent.answer = answer.text;
  };

  for (let round = 0; round < 4; round += 1) {
    // Four devices tell as fast as they are answered, until the server dies under them.
    let dead = false;
    const device = async () => {
      while (!dead) {
        const request = command(devices, 'tell-near-miss', { what: `round ${round}` });
        const sent: Sent = { id: request.id, request, answer: null };
        all.push(sent);
        await send(sent).catch(() => {});
      }
    };
    const busy = [device(), device(), device(), device()];
    await new Promise((resolve) => setTimeout(resolve, 150 + round * 70));
    await server.stop('SIGKILL');
    dead = true;
    await Promise.all(busy);

    server = await start();
    // Each device sends again what was not answered, and one that was: the answer is the same to the byte.
    const lost = all.filter(({ answer }) => answer === null);
    for (const sent of lost) await send(sent);
    const known = all.find(({ answer }) => answer !== null) as Sent;
    const before = known.answer;
    await send(known);
    expect(known.answer).toBe(before);
  }

  const entries: RecordPage['entries'] = [];
  for (;;) {
    const page = await server.ask('GET', `${path}/record?after=${entries.length}`, leader);
    const { entries: more, head } = JSON.parse(page.text) as RecordPage;
    entries.push(...more);
    if (entries.length >= head.number) break;
  }
  expect(firstBadEntry(entries)).toBeNull();
  const kept = entries.slice(1).map(({ text }) => JSON.parse(text).id as string);
  expect(kept.length).toBeGreaterThan(40);
  expect([...kept].sort()).toEqual(all.map(({ id }) => id).sort());
}, 60_000);
