import { afterAll, describe, expect, it } from 'vitest';
import { usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { usualSizes } from '#domain/forecast/moves/lever.ts';
import { readTables } from '#domain/tasks/tables.ts';
import { places } from '#server/places.ts';
import type { PlanJob } from '#server/workers/planner.ts';
import { threadPlanner } from '#server/workers/threadPlanner.ts';
import { smallTables } from '#tests/support/server.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';

const threads = threadPlanner(places.workers);
afterAll(() => threads.close());

const read = readTables({
  tasks: { file: 'tasks', text: smallTables.tasks },
  crews: { file: 'crews', text: smallTables.crews },
});
if (!read.ok) throw new Error(JSON.stringify(read.reason));

const job: PlanJob = {
  work: read.value,
  past: { now: 0, tasks: [] },
  doubts: { doubt: usualDoubt(read.value) },
  shape: 'pert',
  askedFor: 60,
  runs: 1000,
  seed: 7,
  inForce: null,
};

/** So long that it is never done while a test waits. */
const endless = { ...job, runs: 5_000_000 };

async function planned() {
  const result = await threads.plan(job);
  if (!result.ok) throw new Error(result.reason.sentence);
  return result.value;
}

describe('plans and forecasts in threads', () => {
  it('are the same as in the thread of the caller', async () => {
    expect(await threads.plan(job)).toEqual(await plannerHere().plan(job));
    const { plan } = await planned();
    const forecast = { ...job, plan };
    expect(await threads.forecast(forecast)).toEqual(await plannerHere().forecast(forecast));
    const seen = { work: job.work, plan, past: job.past, doubts: job.doubts };
    const movesIt = { seen, sizes: usualSizes, runs: 500, seed: 7 };
    expect(await threads.movesIt(movesIt)).toEqual(await plannerHere().movesIt(movesIt));
    const later = { ...seen, past: { now: 30, tasks: [] } };
    const moved = { before: seen, after: later, confidence: 0.9, runs: 500, seed: 7 };
    expect(await threads.moved(moved)).toEqual(await plannerHere().moved(moved));
    const choice = { ...job, dark: [{ from: 30, to: 600 }] };
    expect(await threads.choice(choice)).toEqual(await plannerHere().choice(choice));
  });

  it('say how far they are', async () => {
    const steps: number[] = [];
    await threads.plan(job, { onProgress: (done, of) => void steps.push(done / of) });
    expect(steps.length).toBeGreaterThan(2);
    expect([...steps].sort((one, other) => one - other)).toEqual(steps);
    expect(steps.at(-1)).toBe(1);
  });

  it('refuse what cannot be planned, as a value', async () => {
    const weak = { ...job, work: { ...job.work, crews: [] } };
    expect(await threads.plan(weak)).toEqual(await plannerHere().plan(weak));
    expect(await threads.plan(weak)).toMatchObject({ ok: false });
  });

  it('stop when they are no longer wanted, and the thread goes on with the next', async () => {
    const stop = new AbortController();
    const first = threads.plan(endless, { signal: stop.signal });
    const waiting = new AbortController();
    const second = threads.plan(endless, { signal: waiting.signal });
    const third = threads.plan(job);
    waiting.abort(new Error('gave up waiting'));
    await expect(second).rejects.toThrow('gave up waiting');
    stop.abort(new Error('not wanted'));
    await expect(first).rejects.toThrow('not wanted');
    expect((await third).ok).toBe(true);
  });

  it('do not wait for each other: a forecast is made while a plan is', async () => {
    const { plan } = await planned();
    const stop = new AbortController();
    const long = threads.plan(endless, { signal: stop.signal });
    const forecast = await threads.forecast({ ...job, plan });
    expect(forecast.runs).toBe(1000);
    stop.abort(new Error('enough'));
    await expect(long).rejects.toThrow('enough');
  });

  it('tell of a job that breaks, and do the next', async () => {
    const { plan } = await planned();
    const broken = { ...job, plan: { ...plan, tasks: [] } };
    await expect(threads.forecast(broken)).rejects.toThrow(/leaves out/);
    expect((await threads.forecast({ ...job, plan })).runs).toBe(1000);
  });

  it('are not begun when they were stopped before', async () => {
    const reason = new Error('too late');
    await expect(threads.plan(job, { signal: AbortSignal.abort(reason) })).rejects.toBe(reason);
  });
});
