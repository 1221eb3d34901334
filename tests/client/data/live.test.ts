import { describe, expect, it } from 'vitest';
import { createApi } from '#client/data/api.ts';
import { createLive } from '#client/data/live.ts';
import type { Snapshot } from '#shared/wire.ts';
import { createFakeClock, settle } from '../support/fakeClock.ts';
import { type Call, createFakeNetwork, createStream, json } from '../support/fakeNetwork.ts';

const now = '2026-11-25T13:33:00.000Z';

function snapshotAt(number: number, fold = 1): Snapshot {
  // Only what the feed looks at: the rest of the state is carried, never read.
  const state = { number, name: 'Larch Ford', tasks: {} } as Snapshot['state'];
  return { build: 'larch', fold, state, you: { role: 'chief', name: 'R' }, forecast: null, now };
}

const delta = (number: number, changed: object = {}, fold = 1) => ({
  number,
  fold,
  changed: { number, ...changed },
  tasks: {},
  gone: [],
  kind: 'task-finished',
});

function liveWith(answer: (call: Call, index: number) => Response | 'down', skew = 0) {
  const clock = createFakeClock(new Date(Date.parse(now) + skew).toISOString());
  const { network, calls } = createFakeNetwork(answer);
  const api = createApi(network, clock, 'secret');
  let held: Snapshot | undefined;
  const cache = {
    read: () => held,
    write: (snapshot: Snapshot) => {
      held = snapshot;
    },
  };
  const live = createLive(api, clock, 'larch', cache);
  return { clock, calls, live, held: () => held, paths: () => calls.map((call) => call.path) };
}

const isFeed = (call: Call): boolean => call.path.includes('/feed');

describe('following a build', () => {
  it('starts from a snapshot and folds deltas onto it', async () => {
    const stream = createStream();
    const { live, held, paths } = liveWith((call) =>
      isFeed(call) ? stream.response : json(snapshotAt(4)),
    );
    const stop = live.follow();
    await settle();
    stream.event('delta', delta(5, { name: 'Larch Ford, east' }), 5);
    await settle();
    expect(paths()).toEqual(['/api/builds/larch', '/api/builds/larch/feed?after=4']);
    expect(held()?.state).toMatchObject({ number: 5, name: 'Larch Ford, east' });
    expect(live.read().status).toBe('live');
    stop();
  });

  it('asks again from the last number when the line breaks, without a new snapshot', async () => {
    const streams = [createStream(), createStream()];
    let opened = 0;
    const { live, clock, paths } = liveWith((call) => {
      if (!isFeed(call)) return json(snapshotAt(4));
      opened += 1;
      return streams[opened - 1]!.response;
    });
    const stop = live.follow();
    await settle();
    streams[0]!.event('delta', delta(5), 5);
    await settle();
    streams[0]!.breakOff();
    await settle();
    expect(live.read().status).toBe('lost');
    await clock.advance(1000);
    expect(live.read().status).toBe('live');
    expect(paths()).toEqual([
      '/api/builds/larch',
      '/api/builds/larch/feed?after=4',
      '/api/builds/larch/feed?after=5',
    ]);
    stop();
  });

  it('waits longer from try to try, but never more than a quarter of a minute', async () => {
    const { live, clock, calls } = liveWith(() => 'down');
    const stop = live.follow();
    const perMinute: number[] = [];
    for (let minute = 0; minute < 3; minute += 1) {
      const before = calls.length;
      await clock.advance(60_000);
      perMinute.push(calls.length - before);
    }
    stop();
    expect(perMinute[0]).toBeLessThan(10);
    expect(perMinute[2]).toBe(4);
    expect(live.read().status).toBe('lost');
  });

  it('takes a new snapshot when the server no longer has the numbers (410)', async () => {
    const stream = createStream();
    let feeds = 0;
    let snapshots = 0;
    const { live, held, clock } = liveWith((call) => {
      if (!isFeed(call)) {
        snapshots += 1;
        return json(snapshotAt(snapshots === 1 ? 4 : 900));
      }
      feeds += 1;
      return feeds === 1 ? json({ code: 'route-unknown', sentence: '' }, 410) : stream.response;
    });
    const stop = live.follow();
    await clock.advance(5000);
    expect(held()?.state.number).toBe(900);
    expect(live.read().status).toBe('live');
    stop();
  });

  for (const [why, frame] of [
    ['another fold', delta(5, {}, 2)],
    ['a number left out', delta(6)],
  ] as const) {
    it(`takes a new snapshot on ${why}`, async () => {
      const streams = [createStream(), createStream()];
      let opened = 0;
      const { live, clock, paths } = liveWith((call) => {
        if (!isFeed(call)) return json(snapshotAt(4 + opened * 10));
        opened += 1;
        return streams[opened - 1]!.response;
      });
      const stop = live.follow();
      await settle();
      streams[0]!.event('delta', frame, frame.number);
      await clock.advance(5000);
      expect(paths().slice(2)).toEqual(['/api/builds/larch', '/api/builds/larch/feed?after=14']);
      stop();
    });
  }

  it('lets replay overlap: a delta already held changes nothing', async () => {
    const stream = createStream();
    const { live, held, calls } = liveWith((call) =>
      isFeed(call) ? stream.response : json(snapshotAt(4)),
    );
    const stop = live.follow();
    await settle();
    stream.event('delta', delta(3, { name: 'older' }), 3);
    await settle();
    expect(held()?.state).toMatchObject({ number: 4, name: 'Larch Ford' });
    expect(calls).toHaveLength(2);
    stop();
  });

  for (const [place, status] of [
    ['snapshot', 401],
    ['feed', 401],
  ] as const) {
    it(`stops for good when the link is withdrawn (${status} on the ${place})`, async () => {
      const no = json({ code: 'link-withdrawn', sentence: 'Ask the leader for a new link.' }, 401);
      const { live, clock, calls } = liveWith((call) =>
        isFeed(call) === (place === 'feed') ? no.clone() : json(snapshotAt(4)),
      );
      live.follow();
      await clock.advance(600_000);
      expect(live.read()).toMatchObject({
        status: 'refused',
        refusal: { sentence: 'Ask the leader for a new link.' },
      });
      expect(calls.length).toBeLessThanOrEqual(2);
    });
  }

  it('hangs up on a line that has gone silent, and calls again', async () => {
    const streams = [createStream(), createStream()];
    let opened = 0;
    const { live, clock } = liveWith((call) => {
      if (!isFeed(call)) return json(snapshotAt(4));
      opened += 1;
      return streams[opened - 1]!.response;
    });
    const stop = live.follow();
    await clock.advance(40_000);
    streams[0]!.event('beat', { now });
    await clock.advance(40_000);
    expect(opened).toBe(1);
    await clock.advance(20_000);
    expect(opened).toBe(2);
    stop();
  });

  it('knows the server clock from its beats', async () => {
    const stream = createStream();
    const { live } = liveWith(
      (call) => (isFeed(call) ? stream.response : json(snapshotAt(4))),
      -90_000,
    );
    const stop = live.follow();
    await settle();
    expect(live.read().skew).toBe(90_000);
    stream.event('beat', { now: '2026-11-25T13:33:01.000Z' });
    await settle();
    expect(live.read().skew).toBe(91_000);
    stop();
  });

  it('shows long jobs while they run and forgets them when done', async () => {
    const stream = createStream();
    const { live } = liveWith((call) => (isFeed(call) ? stream.response : json(snapshotAt(4))));
    const stop = live.follow();
    await settle();
    stream.event('progress', { job: 'plan', done: 3, of: 10 });
    await settle();
    expect(live.read().jobs).toEqual({ plan: { done: 3, of: 10 } });
    stream.event('progress', { job: 'plan', done: 10, of: 10 });
    await settle();
    expect(live.read().jobs).toEqual({});
    stop();
  });
});
