import { describe, expect, it } from 'vitest';
import type { Entry } from '#domain/progress/entry.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import { holdUps } from '#domain/progress/views/holdUps.ts';
import { spanOf } from '#domain/progress/views/span.ts';
import { strengthOf } from '#domain/progress/views/strength.ts';
import { demoOpener } from '#server/demo/openDemo.ts';
import { loadKits } from '#server/loadKits.ts';
import { places } from '#server/places.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import { testClock, testIds } from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';

async function openDemo(how: 'fresh' | 'half-built') {
  const kits = await loadKits(places.kits);
  if (!kits.ok) throw new Error('the shipped kits do not load');
  const ledger = memoryLedger();
  const clock = testClock('2026-11-25T13:33:00.000Z');
  const open = demoOpener({
    clock,
    ids: testIds(),
    ledger,
    kits: kits.value,
    planner: plannerHere(),
    program: 'test',
  });
  const { build, links } = await open(how);
  const entries = (await ledger.entries(build, 0, 10_000)).map(
    ({ text }) => JSON.parse(text) as Entry,
  );
  const state = entries.reduce<BuildState>(evolve, emptyBuild);
  const told = (await ledger.told(build, 1000)).map(
    ({ text }) => JSON.parse(text) as ForecastFrame,
  );
  return { entries, links, state, told, now: clock.now().toISOString() };
}

describe('the half-built demo', async () => {
  const { entries, links, state, told, now } = await openDemo('half-built');

  it('stands with eight bays built, moved 24 of its metres, bay 9 at work', () => {
    const span = spanOf(state);
    expect(span.bays.filter(({ whole }) => whole === 'done')).toHaveLength(8);
    expect(span.bays[8]?.whole).toBe('at-work');
    expect(span.moved).toBe(24);
    expect(span.landed).toBe(false);
  });

  it('broke no rule on the way', () => {
    expect(entries.flatMap(({ breaches }) => breaches ?? [])).toEqual([]);
  });

  it('has told forecasts from its start on, each from what was known then', () => {
    expect(told[0]!.at).toBe(state.start);
    for (const [place, { number, at, forecast }] of told.entries()) {
      const known = entries.filter(({ receivedAt }) => receivedAt <= at).length;
      expect([number, at < now]).toEqual([known, true]);
      expect(forecast!.openings).toHaveLength(20);
      if (place > 0) expect(at > told[place - 1]!.at).toBe(true);
    }
    // Half of it is done: less is in doubt than at the start.
    expect(told.at(-1)!.forecast!.sd).toBeLessThan(told[0]!.forecast!.sd);
  });

  it('tells nothing that has not happened yet', () => {
    expect(entries.filter(({ happenedAt }) => happenedAt > now)).toEqual([]);
  });

  it('has truck 5 late and holding, one hand hurt, water rising', () => {
    expect(state.loads['load-5']?.status).toBe('late');
    expect(holdUps(state, now).some(({ sentence }) => /truck 5/i.test(sentence))).toBe(true);
    expect(strengthOf(state).hurt).toBe(1);
    expect(state.water.rise).toBe(0.04);
  });

  it('gives a link to leader, log keeper, each chief, inspector and commander', () => {
    expect(new Set(links.map(({ role }) => role))).toEqual(
      new Set(['leader', 'log', 'chief', 'inspector', 'commander']),
    );
  });
});

describe('the fresh demo', async () => {
  const { state } = await openDemo('fresh');

  it('waits for its leader to plan it', () => {
    expect(state.plan).toBeNull();
    expect(state.work.tasks.length).toBeGreaterThan(100);
    expect(Object.values(state.tasks).every(({ status }) => status === 'to-come')).toBe(true);
  });
});
