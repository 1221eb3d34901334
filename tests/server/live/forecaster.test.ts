import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Forecast } from '#domain/forecast/forecast.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { emptyBuild } from '#domain/progress/state.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { Forecaster } from '#server/live/forecaster.ts';
import type { LiveBuild, OnChange } from '#server/live/liveBuild.ts';
import type { Planner } from '#server/workers/planner.ts';
import { testClock } from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';

afterEach(() => vi.useRealTimers());

const planned: BuildState = {
  ...emptyBuild,
  number: 1,
  start: '2026-03-01T11:00:00.000Z',
  plan: { minutesToOpen: 300, tasks: [] } as unknown as Plan,
};

const forecast: Forecast = {
  runs: 10,
  seed: 1,
  shape: 'pert',
  mean: 300.123456,
  sd: 5.4321,
  p10: 291.999999,
  p50: 300,
  p80: 305,
  p90: 309.005,
  chanceBy: { minutes: 330, chance: 0.98765 },
  openings: [290.123456],
  percentiles: [289.987654],
  onChain: [
    { task: 'move', share: 0.123456 },
    { task: 'pegs', share: 0.004 },
  ],
  crewsOnChain: [{ crew: 'left', share: 0.987654 }],
  milestones: [{ task: 'move', p10: 1.23456, p50: 2, p80: 3.005001, p90: 4.999 }],
};

/** A forecaster on a build whose state the test sets, and a planner that answers when the test lets it. */
function bench() {
  vi.useFakeTimers();
  let state = planned;
  let tell: OnChange = () => {};
  const sent: string[] = [];
  const live = {
    build: 'ford',
    get state() {
      return state;
    },
    onChange: (listener: OnChange) => {
      tell = listener;
    },
    feeds: { send: (text: string) => sent.push(text) },
  } as unknown as LiveBuild;
  const asked: number[] = [];
  const waiting: ((forecast: Forecast) => void)[] = [];
  const planner = {
    forecast: () => {
      asked.push(state.number);
      return new Promise<Forecast>((resolve) => waiting.push(resolve));
    },
  } as unknown as Planner;
  const failures: unknown[] = [];
  const ledger = memoryLedger();
  const forecaster = new Forecaster(live, ledger, planner, testClock(), {
    runs: 10,
    wait: 200,
    moveWait: 1500,
    onFailure: (error) => failures.push(error),
  });
  return {
    forecaster,
    ledger,
    asked,
    sent,
    failures,
    change: (more: Partial<BuildState>) => {
      const before = state;
      state = { ...state, ...more, number: state.number + 1 };
      tell(before, state);
    },
    answer: async () => {
      waiting.shift()?.(forecast);
      await vi.advanceTimersByTimeAsync(0);
    },
    pass: (milliseconds: number) => vi.advanceTimersByTimeAsync(milliseconds),
  };
}

describe('the forecaster', () => {
  it('waits a little for more news, then forecasts once for all of it', async () => {
    const { asked, change, pass } = bench();
    for (let count = 0; count < 5; count += 1) change({ tasks: {} });
    expect(asked).toEqual([]);
    await pass(200);
    expect(asked).toEqual([6]);
  });

  it('never runs twice at once, and the latest state wins', async () => {
    const { asked, change, answer, pass, forecaster } = bench();
    change({ tasks: {} });
    await pass(200);
    change({ tasks: {} });
    change({ tasks: {} });
    await pass(1000);
    expect(asked).toEqual([2]);
    await answer();
    await pass(200);
    expect(asked).toEqual([2, 4]);
    await answer();
    await pass(1000);
    expect(asked).toHaveLength(2);
    expect(forecaster.frame?.number).toBe(4);
  });

  it('lets news come without pause and still gets done', async () => {
    const { sent, change, answer, pass } = bench();
    for (let round = 0; round < 20; round += 1) {
      change({ tasks: {} });
      await pass(100);
      await answer();
    }
    expect(sent.length).toBeGreaterThan(3);
  });

  it('does not stir for what no forecast hangs on', async () => {
    const { asked, change, pass } = bench();
    change({ events: [], confidence: 0.8 });
    await pass(1000);
    expect(asked).toEqual([]);
  });

  it('keeps what it sends up, and nothing of what it did not make', async () => {
    const { ledger, sent, change, answer, pass } = bench();
    change({ plan: null });
    await pass(200);
    expect(sent[0]).toContain('No plan has been accepted yet.');
    change({ plan: planned.plan });
    await pass(200);
    await answer();
    const told = await ledger.told('ford', 10);
    expect(told.map(({ number }) => number)).toEqual([3]);
    expect(sent[1]).toContain(told[0]?.text);
  });

  it('sends minutes to the hundredth, shares that are something, and the chance as it is', async () => {
    const { forecaster, change, answer, pass } = bench();
    change({ tasks: {} });
    await pass(200);
    await answer();
    expect(forecaster.frame?.forecast).toMatchObject({
      mean: 300.12,
      p10: 292,
      openings: [290.12],
      percentiles: [289.99],
      chanceBy: { minutes: 330, chance: 0.98765 },
      onChain: [{ task: 'move', share: 0.12 }],
      crewsOnChain: [{ crew: 'left', share: 0.99 }],
      milestones: [{ task: 'move', p10: 1.23, p50: 2, p80: 3.01, p90: 5 }],
    });
  });

  it('sends nothing more once it is stopped', async () => {
    const { forecaster, sent, change, answer, pass } = bench();
    change({ tasks: {} });
    await pass(200);
    forecaster.stop();
    await answer();
    change({ tasks: {} });
    await pass(1000);
    expect(sent).toEqual([]);
  });

  it('shows a forecast even when it could not be kept, and tells of the failure', async () => {
    const { ledger, failures, forecaster, change, answer, pass } = bench();
    ledger.keepTold = async () => {
      throw new Error('disk full');
    };
    change({ tasks: {} });
    await pass(200);
    await answer();
    expect(forecaster.frame?.number).toBe(2);
    expect(failures).toHaveLength(1);
  });
});
