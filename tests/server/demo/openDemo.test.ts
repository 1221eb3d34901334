import { describe, expect, it } from 'vitest';
import type { Entry } from '#domain/progress/entry.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import { workAsTold } from '#domain/progress/views/asTold.ts';
import { courseNow } from '#domain/progress/views/courseNow.ts';
import { holdUps } from '#domain/progress/views/holdUps.ts';
import { pastOf } from '#domain/progress/views/past.ts';
import { spanOf } from '#domain/progress/views/span.ts';
import { strengthOf } from '#domain/progress/views/strength.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { demoOpener } from '#server/demo/openDemo.ts';
import { loadKits } from '#server/loadKits.ts';
import { places } from '#server/places.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { testClock, testIds } from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';

async function openDemo(how: 'fresh' | 'half-built', at = '2026-11-25T13:33:00.000Z') {
  const kits = await loadKits(places.kits);
  if (!kits.ok) throw new Error('the shipped kits do not load');
  const ledger = memoryLedger();
  const clock = testClock(at);
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

const hours = ['02:00', '06:00', '12:00', '17:00', '20:00'];
const starts = ['2026-11-25', '2026-06-20'].flatMap((day) => hours.map((hour) => `${day}T${hour}`));

/** Minutes from one instant to another. */
function minutes(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / 60_000;
}

describe.each(starts)('the half-built demo opened at %s', async (start) => {
  const { entries, state, told, now } = await openDemo('half-built', `${start}:23.000Z`);
  const plan = state.plan!;

  it('stands at the scene: move 4 done, both sides of bay 9 not, one of them two minutes at work', () => {
    const span = spanOf(state);
    expect(span.bays.filter(({ whole }) => whole === 'done')).toHaveLength(8);
    expect(span.bays[8]?.whole).toBe('at-work');
    expect(span.moved).toBe(24);
    expect(span.landed).toBe(false);
    const since = minutes(state.tasks['bay-9-left']!.startedAt!, now);
    expect(Math.abs(since - 2)).toBeLessThan(0.05);
    expect(state.tasks['secure-4']!.status).toBe('at-work');
  });

  it('has truck 5 twelve minutes after its time, told then to be 25 minutes late', () => {
    const { status, at, planned, tells } = state.loads['load-5']!;
    expect(status).toBe('late');
    expect(Math.abs(minutes(planned.at, now) - 12)).toBeLessThan(0.05);
    expect(minutes(planned.at, at)).toBe(25);
    expect(tells[0]!.toldAt).toBe(planned.at);
    expect(holdUps(state, now).some(({ sentence }) => /truck 5/i.test(sentence))).toBe(true);
  });

  it('has a hand hurt at the bracing and the water rising, and nothing that is still to happen', () => {
    expect(strengthOf(state).hurt).toBe(1);
    const hurt = state.events.find(({ kind }) => kind === 'hurt')!;
    const { startedAt, finishedAt } = state.tasks['brace-3']!;
    expect(hurt.at >= startedAt! && hurt.at <= finishedAt!).toBe(true);
    expect(state.water.rise).toBe(0.04);
    expect(entries.flatMap(({ breaches }) => breaches ?? [])).toEqual([]);
    expect(entries.filter(({ happenedAt }) => happenedAt > now)).toEqual([]);
  });

  it('was planned for the light that there is from its start', () => {
    const work = workAsTold({ ...state, crews: {}, loads: {} });
    expect(checkPlan(work, plan, { crews: true })).toEqual([]);
  });

  it('is asked for by a time that it has a fair chance to keep', () => {
    const asked = told.at(-1)!.forecast!.chanceBy!;
    expect(asked.chance).toBeGreaterThan(0.6);
    expect(asked.chance).toBeLessThan(1);
  });

  it('was played as far from the plan by night as by day', () => {
    const planned = new Map(plan.tasks.map((own) => [own.task, own]));
    const luck = Object.entries(state.tasks)
      .filter(
        ([task, { status }]) =>
          status === 'done' && planned.get(task)!.finish > planned.get(task)!.start,
      )
      .map(([task, { startedAt, finishedAt }]) => {
        const { start, finish } = planned.get(task)!;
        return minutes(startedAt!, finishedAt!) / (finish - start);
      });
    const mean = luck.reduce((sum, each) => sum + each, 0) / luck.length;
    expect(Math.abs(mean - 1)).toBeLessThan(0.05);
  });

  it('opens at about the same time by a plan made now as by the plan that was accepted', () => {
    const work = workAsTold(state);
    const again = makePlan(work, {
      shape: plan.shape,
      crews: true,
      past: pastOf(state, now),
      near: plan,
    });
    if (!again.ok) throw new Error(again.reason.sentence);
    const goesOn = courseNow(state, now)!.opening;
    expect(Math.abs(again.value.minutesToOpen - goesOn)).toBeLessThan(20);
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
