import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { formReader } from '#server/form.ts';
import { applyDelta } from '#shared/applyDelta.ts';
import { BeatFrame, DeltaFrame, ForecastFrame, type Snapshot } from '#shared/wire.ts';
import {
  command,
  openTestBuild,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';
import { openTestFeed, type TestFeed } from '#tests/support/serverFeed.ts';

const port = 4421;
let server: TestServer;
let ford: TestBuild;
let open: TestFeed[];
beforeAll(async () => {
  server = await testServer({ beatEvery: 50 });
  await server.app.listen({ port, host: '127.0.0.1' });
});
beforeEach(async () => {
  ford = await openTestBuild(server);
  open = [];
});
afterEach(() => {
  for (const feed of open) feed.close();
});
afterAll(() => server.app.close());

async function follow(who: string, after: number): Promise<TestFeed> {
  const url = `http://127.0.0.1:${port}/api/builds/${ford.build}/feed?after=${after}`;
  const feed = await openTestFeed(url, ford.secret(who));
  open.push(feed);
  return feed;
}

const tell = (what: string) =>
  server.ask(
    'POST',
    `/api/builds/${ford.build}/commands`,
    ford.secret('left'),
    command(server, 'tell-near-miss', { what }),
  );

const snapshot = async () =>
  (await server.ask<Snapshot>('GET', `/api/builds/${ford.build}`, ford.secret('commander'))).json;

const numbersOf = ({ events }: TestFeed) =>
  events.filter(({ event }) => event === 'delta').map(({ id }) => Number(id));

const isDelta = (number: number) => (event: { event: string; id: string | null }) =>
  event.event === 'delta' && event.id === String(number);

describe('a feed', () => {
  it('carries what is told within a second, to the commander too', async () => {
    const feed = await follow('commander', 1);
    const sent = performance.now();
    await tell('a strap slipped');
    const delta = await feed.until(isDelta(2));
    expect(performance.now() - sent).toBeLessThan(1000);
    expect(formReader(DeltaFrame)(delta.data).ok).toBe(true);
  });

  it('leads a snapshot to the state that the server has', async () => {
    const before = await snapshot();
    const feed = await follow('leader', before.state.number);
    await tell('one');
    await server.ask(
      'POST',
      `/api/builds/${ford.build}/commands`,
      ford.secret('left'),
      command(server, 'tell-started', { task: 'pegs', crew: 'left' }),
    );
    await feed.until(isDelta(3));
    const deltas = feed.events.filter(({ event }) => event === 'delta');
    const state = deltas.reduce(
      (held, { data }) => applyDelta(held, data as DeltaFrame),
      before.state,
    );
    expect(state).toEqual((await snapshot()).state);
  });

  it('goes on from the last number a device has: no gap, nothing twice', async () => {
    for (const what of ['2', '3', '4']) await tell(what);
    const feed = await follow('leader', 2);
    await tell('5');
    await feed.until(isDelta(5));
    expect(numbersOf(feed)).toEqual([3, 4, 5]);
  });

  it('misses nothing that is told while it is being opened', async () => {
    const opening = follow('leader', 1);
    const told = Promise.all(['2', '3', '4', '5', '6'].map(tell));
    const feed = await opening;
    await told;
    await feed.until(isDelta(6));
    expect(numbersOf(feed)).toEqual([2, 3, 4, 5, 6]);
  });

  it('starts with the clock of the server and beats on', async () => {
    const feed = await follow('log', 1);
    const first = await feed.until(({ event }) => event === 'beat');
    expect(formReader(BeatFrame)(first.data).ok).toBe(true);
    expect(feed.events[0]).toBe(first);
    const count = feed.events.length;
    await feed.until(({ event, data }) => event === 'beat' && data !== first.data);
    await new Promise((resolve) => setTimeout(resolve, 150));
    expect(feed.events.length).toBeGreaterThan(count);
  });

  it('says what the forecast is, or why there is none', async () => {
    const feed = await follow('commander', 1);
    const { data } = await feed.until(({ event }) => event === 'forecast');
    const frame = formReader(ForecastFrame)(data);
    expect(frame.ok && frame.value.forecast).toBeNull();
    expect(frame.ok && frame.value.why).toMatch(/plan/);
  });

  it('ends at once when its link is withdrawn; others go on', async () => {
    const feed = await follow('log', 1);
    const other = await follow('commander', 1);
    const id = ford.links.find(({ role }) => role === 'log')?.id;
    await server.ask('DELETE', `/api/builds/${ford.build}/links/${id}`, ford.secret('leader'));
    await feed.ended;
    await tell('afterwards');
    await other.until(isDelta(2));
    expect(numbersOf(feed)).toEqual([]);
    expect((await follow('log', 1)).status).toBe(401);
  });

  it('does not keep the server from stopping', async () => {
    const other = await testServer();
    const weir = await openTestBuild(other);
    await other.app.listen({ port: port + 1, host: '127.0.0.1' });
    const url = `http://127.0.0.1:${port + 1}/api/builds/${weir.build}/feed?after=1`;
    const feed = await openTestFeed(url, weir.secret('leader'));
    await other.app.close();
    await feed.ended;
    expect(feed.status).toBe(200);
  });
});

describe('a device that was away too long', () => {
  it('is told to take a new snapshot, which leads it on', async () => {
    for (let count = 0; count < 80; count += 1) await tell(String(count));
    expect((await follow('leader', 1)).status).toBe(410);
    const { state } = await snapshot();
    expect((await follow('leader', state.number)).status).toBe(200);
    expect((await follow('leader', state.number - 60)).status).toBe(200);
  });

  it('is told the same when it knows more than the record, as after a restored backup', async () => {
    expect((await follow('leader', 2)).status).toBe(410);
  });
});
