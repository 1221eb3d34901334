import { afterAll, describe, expect, it } from 'vitest';
import { places } from '#server/places.ts';
import { processSearcher } from '#server/workers/processSearcher.ts';
import type { SearchJob } from '#server/workers/searcher.ts';
import { threadSearcher } from '#server/workers/threadSearcher.ts';
import type { PlanNews } from '#shared/wirePlan.ts';
import { demoBuild } from '#tests/bench/demoBuild.ts';
import { checkPlan } from '#tests/support/checkPlan.ts';
import { randomWork } from '#tests/support/randomWork.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const searchers = {
  thread: threadSearcher(places.workers),
  process: processSearcher(places.workers),
};
afterAll(async () => {
  await Promise.all(Object.values(searchers).map((searcher) => searcher.close()));
});

const past = { now: 0, tasks: [] };

/** Large and crowded enough that nobody proves a plan of it while a test waits. */
const large: SearchJob = {
  work: randomWork(11, { tasks: 300, crews: 4, zones: 3, joint: true, keepOff: true }),
  past,
  shape: 'pert',
  accepted: null,
  seconds: 100,
};

describe.each(Object.entries(searchers))('a long search in a %s', (_, searcher) => {
  it('ends by itself when nothing can be better', async () => {
    const news: PlanNews[] = [];
    const work = smallWork(
      [
        { id: 'a', minutes: 5 },
        { id: 'b', minutes: 4, after: ['a'] },
      ],
      { crews: [{ id: 'left', people: 1 }] },
    );
    const found = await searcher.search(
      { ...large, work },
      { onNews: (latest) => void news.push(latest) },
    );
    expect(found).toMatchObject({ ok: true, value: { minutesToOpen: 9, lowerBound: 9 } });
    expect(news.at(-1)).toMatchObject({ minutesToOpen: 9, proven: true });
  });

  it('keeps to its time and finds a plan that stands the check', async () => {
    const begun = performance.now();
    const { work, plan: accepted } = demoBuild(50);
    const found = await searcher.search({ ...large, work, accepted, seconds: 1 });
    expect(performance.now() - begun).toBeLessThan(15_000);
    if (!found.ok) throw new Error(found.reason.sentence);
    expect(checkPlan(work, found.value, { crews: true })).toEqual([]);
  });

  it('hands over the best plan so far as soon as it is told to', async () => {
    const begun = performance.now();
    const take = new AbortController();
    const news: PlanNews[] = [];
    const found = await searcher.search(large, {
      take: take.signal,
      onNews: (latest) => {
        news.push(latest);
        take.abort();
      },
    });
    expect(performance.now() - begun).toBeLessThan(30_000);
    if (!found.ok) throw new Error(found.reason.sentence);
    expect(checkPlan(large.work, found.value, { crews: true })).toEqual([]);
    // What was told of it holds for what is handed over.
    expect(found.value.minutesToOpen).toBeLessThanOrEqual((news[0]?.minutesToOpen ?? 0) + 1e-6);
    expect(found.value.lowerBound).toBeLessThanOrEqual(found.value.minutesToOpen);
  });

  it('is given up at once, and the next one has its turn', async () => {
    const stop = new AbortController();
    const running = searcher.search(large, {
      signal: stop.signal,
      onProgress: () => stop.abort(new Error('not wanted')),
    });
    await expect(running).rejects.toThrow('not wanted');
    const next = await searcher.search({ ...large, seconds: 1 });
    expect(next.ok).toBe(true);
  });

  it('says how far it is', async () => {
    const steps: number[] = [];
    await searcher.search(
      { ...large, seconds: 1 },
      { onProgress: (done, of) => void steps.push(done / of) },
    );
    expect(steps.length).toBeGreaterThan(1);
    expect(Math.max(...steps)).toBeLessThanOrEqual(1);
  });
});
