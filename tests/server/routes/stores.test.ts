import { beforeAll, describe, expect, it } from 'vitest';
import { demoOpener } from '#server/demo/openDemo.ts';
import { formReader } from '#server/form.ts';
import { loadKits } from '#server/loadKits.ts';
import { places } from '#server/places.ts';
import type { StoresReply } from '#shared/wireStores.ts';
import { StoresReply as Schema } from '#shared/wireStores.ts';
import { openTestBuild, secretOf, testClock, testIds, testServer } from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';

let stores: StoresReply;
beforeAll(async () => {
  const kits = await loadKits(places.kits);
  if (!kits.ok) throw new Error(JSON.stringify(kits.reason));
  const ports = {
    clock: testClock(),
    ids: testIds(),
    ledger: memoryLedger(),
    kits: new Map(kits.value),
  };
  const planner = plannerHere();
  const openDemo = demoOpener({ ...ports, planner, program: 'spanwright test' });
  const server = await testServer({ ...ports, planner, openDemo });
  const { build, links } = await openDemo('half-built');
  const log = links.find(({ role }) => role === 'log');
  const path = `/api/builds/${build}/stores`;
  const answer = await server.ask<StoresReply>('GET', path, secretOf(log?.address ?? ''));
  stores = answer.json;
});

describe('the stores of a half-built bridge', () => {
  it('are as their schema has them', () => {
    expect(formReader(Schema)(stores).ok).toBe(true);
  });

  it('name each load with all that is on it, and together all the stores', () => {
    expect(stores.loads).toHaveLength(6);
    const trucks = stores.kit?.packing?.trucks ?? [];
    const packed = trucks.reduce((sum, { kilograms }) => sum + kilograms, 0);
    expect(packed).toBeCloseTo(stores.kit?.kilograms ?? 0, 6);
    for (const { carries } of stores.loads) expect(carries.length).toBeGreaterThan(0);
  });

  it('draw when the loads to come are wanted, and no others', () => {
    expect(stores.draws).toBeGreaterThan(0);
    for (const { here, wanted, latestDrawn } of stores.loads) {
      if (here) expect(wanted).toBeNull();
      else {
        expect(wanted!.p10).toBeLessThanOrEqual(wanted!.p90);
        expect(latestDrawn!.p50).toBeGreaterThanOrEqual(wanted!.p50);
      }
    }
    expect(stores.loads.filter(({ here }) => !here).map(({ load }) => load)).toEqual([
      'load-5',
      'load-6',
    ]);
  });

  it('say what a late load does to the opening, the later the worse', () => {
    const late = stores.loads.find(({ load }) => load === 'load-5');
    const opens = late?.ifLate.map((one) => one.opens) ?? [];
    expect(opens).toHaveLength(3);
    expect(opens).toEqual([...opens].sort((a, b) => a - b));
    const later = late?.ifLate.map((one) => one.laterOnAverage ?? 0) ?? [];
    // Past the time at which all draws wait for it, an hour late is an hour later.
    expect(later[2]! - later[1]!).toBeLessThanOrEqual(30 + 1e-6);
    expect(later[2]!).toBeGreaterThan(later[0]!);
  });
});

it('a build without a bridge has loads and no kit', async () => {
  const server = await testServer();
  const ford = await openTestBuild(server, { name: 'Ford' });
  const answer = await server.ask<StoresReply>(
    'GET',
    `/api/builds/${ford.build}/stores`,
    ford.secret('leader'),
  );
  expect(answer.json.kit).toBeNull();
});
