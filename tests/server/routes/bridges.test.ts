import Value from 'typebox/value';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadKits } from '#server/loadKits.ts';
import { places } from '#server/places.ts';
import type { Planner } from '#server/workers/planner.ts';
import type { RefusalReply } from '#shared/wire.ts';
import { BridgeReply, type ChoiceTimesFrame, StagesReply } from '#shared/wireBridges.ts';
import {
  larchFordBridge,
  openTestBuild,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';

const { ground, kit } = larchFordBridge;

let server: TestServer;
let build: TestBuild;
beforeAll(async () => {
  server = await testServer();
  build = await openTestBuild(server, { source: larchFordBridge });
});

describe('a bridge on trial', () => {
  const design = (body: object) =>
    server.ask<BridgeReply & RefusalReply>('POST', '/api/bridges', server.hostSecret, body);

  it('is designed with what it takes, its launch and the choice, and recorded nowhere', async () => {
    const before = await server.ledger.heads();
    const { json } = await design({ ground, kit });
    expect([...Value.Errors(BridgeReply, json)]).toEqual([]);
    expect(json.bridge.length).toBeGreaterThan(ground.gap);
    expect(json.work.holds).toBeGreaterThan(0);
    expect(json.work.tasks).toBeGreaterThan(json.work.holds);
    expect(json.stages.map(({ moved }) => moved)).toEqual(
      json.bridge.stages.map(({ moved }) => moved),
    );
    const [advised] = json.choice.fitting;
    expect(advised).toMatchObject({ bays: json.bridge.bays, against: null });
    expect(json.choice.ruledOut.every(({ limits }) => limits.length > 0)).toBe(true);
    expect(json.hangsOn).toContain('wind');
    expect(await server.ledger.heads()).toEqual(before);
  });

  it('is the one that is wished for', async () => {
    const { json } = await design({ ground, kit, wish: { bays: 12 } });
    expect(json.bridge.bays).toBe(12);
  });

  it('that cannot be is refused with every limit that binds', async () => {
    const answer = await design({ ground: { ...ground, roomBehind: 12 }, kit });
    expect([answer.status, answer.json.code]).toEqual([422, 'bridge-impossible']);
    expect(answer.json.of).toContain('roomBehind');
  });
});

describe('when each bridge of the choice opens', () => {
  const times = (body: object, on = server) =>
    on.ask<RefusalReply>('POST', '/api/bridges/times', on.hostSecret, body);
  const framesOf = (text: string) =>
    text
      .split('\n\n')
      .filter((event) => event.startsWith('event: choice'))
      .map((event) => JSON.parse(event.split('data: ')[1] ?? '') as ChoiceTimesFrame);

  it('comes bridge by bridge, with how far the work is between', async () => {
    const answer = await times({ ground, kit });
    expect(answer.headers['content-type']).toMatch(/^text\/event-stream/);
    const frames = framesOf(answer.text);
    expect(frames.map(({ bays }) => bays)).toEqual([11, 12]);
    for (const { times } of frames) {
      expect(times?.p80).toBeGreaterThan(times?.p50 ?? Number.NaN);
    }
    // Of the plans: the few runs of a test do not tell bridges apart that open within ten minutes of each other.
    expect(frames[0]?.times?.planned).toBeLessThan(frames[1]?.times?.planned ?? 0);
    expect(answer.text.match(/event: progress/g)?.length).toBeGreaterThan(2);
  });

  it('is later where most of the work falls into the dark', async () => {
    const at = async (start: string) => framesOf((await times({ ground, kit, start })).text)[0];
    const [morning, dusk] = [
      await at('2026-06-21T06:00:00.000Z'),
      await at('2026-06-21T21:00:00.000Z'),
    ];
    expect(dusk?.times?.p50).toBeGreaterThan(morning?.times?.p50 ?? Number.NaN);
  });

  it('is nothing for a ground that no bridge of the kit answers', async () => {
    const answer = await times({ ground: { ...ground, gap: 150 }, kit });
    expect([answer.status, framesOf(answer.text)]).toEqual([200, []]);
  });

  it('is refused for a kit that is not here, and for a ground that cannot be', async () => {
    expect((await times({ ground, kit: 'none' })).json.code).toBe('kit-unknown');
    expect((await times({ ground: { ...ground, gap: -1 }, kit })).json.code).toBe('form-wrong');
    const zone = { ...ground, zone: 'Nowhere/Here' };
    expect((await times({ ground: zone, kit })).json.code).toBe('form-wrong');
  });

  it('leaves out the times of a bridge whose work cannot be planned', async () => {
    const weak: Planner = {
      ...plannerHere(),
      choice: async () => ({
        ok: false,
        reason: { code: 'no-crew-can', sentence: 'No crew can.' },
      }),
    };
    const answer = await times({ ground, kit }, await testServer({ planner: weak }));
    expect(framesOf(answer.text).map(({ times }) => times)).toEqual([null, null]);
  });

  it('ends the stream when the work breaks', async () => {
    const broken: Planner = { ...plannerHere(), choice: () => Promise.reject(new Error('broken')) };
    const answer = await times({ ground, kit }, await testServer({ planner: broken }));
    expect([answer.status, framesOf(answer.text)]).toEqual([200, []]);
  });
});

describe('the stages of a build', () => {
  const stages = (query: string, who = 'commander', of = build) =>
    server.ask<StagesReply>('GET', `/api/builds/${of.build}/stages${query}`, of.secret(who));

  it('are there for everybody, and what holds the bridge where it stopped', async () => {
    const { json } = await stages('?stage=5&into=3.5', 'left');
    expect([...Value.Errors(StagesReply, json)]).toEqual([]);
    expect(json.stages).toHaveLength(7);
    expect(json.held?.moved).toBeCloseTo(24 + 3.5, 9);
    const [, front] = json.held?.reactions ?? [];
    expect(json.held?.reactions.reduce((sum, { newtons }) => sum + newtons, 0)).toBeCloseTo(
      (json.held?.kilograms ?? 0) * 9.80665,
      3,
    );
    expect(front).toBeDefined();
    expect(json.pullBack.map(({ stage, metres }) => [stage, metres])).toEqual([
      [5, 3.5],
      [4, 6],
      [3, 6],
      [2, 6],
      [1, 6],
    ]);
  });

  it('without a place take the end of the move, and say nothing of holding without a stage', async () => {
    expect((await stages('?stage=4')).json.held?.moved).toBe(24);
    const { json } = await stages('');
    expect([json.held, json.pullBack]).toEqual([null, []]);
    expect((await stages('?stage=99')).json.held).toBeNull();
  });

  it('are none where there is no bridge', async () => {
    const tables = await openTestBuild(server);
    expect((await stages('', 'leader', tables)).json.stages).toEqual([]);
  });

  it('are refused where the kit is no longer what the bridge was designed with', async () => {
    const read = await loadKits(places.kits);
    const kits = new Map(read.ok ? read.value : []);
    const own = await testServer({ kits });
    const opened = await openTestBuild(own, { source: larchFordBridge });
    kits.delete('heron');
    const path = `/api/builds/${opened.build}/stages`;
    const answer = await own.ask<RefusalReply>('GET', path, opened.secret('leader'));
    expect([answer.status, answer.json.code]).toEqual([404, 'kit-unknown']);
  });
});
