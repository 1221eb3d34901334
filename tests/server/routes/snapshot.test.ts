import { expect, it } from 'vitest';
import { demoOpener } from '#server/demo/openDemo.ts';
import { formReader } from '#server/form.ts';
import { loadKits } from '#server/loadKits.ts';
import { places } from '#server/places.ts';
import { Snapshot } from '#shared/wire.ts';
import { secretOf, testClock, testIds, testServer } from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';

it('a half-built demo build is shown whole to every page, as the schema has it', async () => {
  const kits = await loadKits(places.kits);
  if (!kits.ok) throw new Error(JSON.stringify(kits.reason));
  const own = new Map(kits.value);
  const ports = { clock: testClock(), ids: testIds(), ledger: memoryLedger(), kits: own };
  const planner = plannerHere();
  const openDemo = demoOpener({ ...ports, planner, program: 'spanwright test' });
  const server = await testServer({ ...ports, planner, openDemo });
  const { build, links } = await openDemo('half-built');
  const read = formReader(Snapshot);
  const states = new Set<string>();
  for (const { role, crew, name, address } of links) {
    const answer = await server.ask('GET', `/api/builds/${build}`, secretOf(address));
    const snapshot = read(answer.json);
    if (!snapshot.ok) throw new Error(JSON.stringify(snapshot.reason));
    expect(snapshot.value.you).toEqual(crew === undefined ? { role, name } : { role, name, crew });
    // Offers of a fresh plan are the leader's to weigh.
    expect(snapshot.value.offer).toBe(role === 'leader' ? null : undefined);
    states.add(JSON.stringify(snapshot.value.state));
  }
  expect(links.length).toBeGreaterThan(8);
  expect(states.size).toBe(1);
  const [state = '{}'] = states;
  expect(JSON.parse(state).plan.tasks.length).toBeGreaterThan(100);
});

it('a snapshot is packed to a device that takes it packed', async () => {
  const server = await testServer();
  const { json } = await server.ask<{ build: string; links: { address: string }[] }>(
    'POST',
    '/api/builds',
    server.hostSecret,
    {
      id: server.ids.long(),
      name: 'Ford',
      unit: '',
      start: '2026-03-01T11:00:00.000Z',
      askedFor: null,
      zone: 'UTC',
      confidence: 0.9,
      source: { kind: 'tables', tasks: `task,likely\r\n${tasks(200)}` },
    },
  );
  const headers = { authorization: `Bearer ${secretOf(json.links[0]?.address ?? '')}` };
  const url = `/api/builds/${json.build}`;
  const plain = await server.app.inject({ url, headers });
  const packed = await server.app.inject({
    url,
    headers: { ...headers, 'accept-encoding': 'gzip' },
  });
  expect(packed.headers['content-encoding']).toBe('gzip');
  expect(packed.headers.vary).toBe('accept-encoding');
  expect(packed.rawPayload.length).toBeLessThan(plain.rawPayload.length / 5);
});

function tasks(count: number): string {
  return Array.from({ length: count }, (_, place) => `t${place},5`).join('\r\n');
}
