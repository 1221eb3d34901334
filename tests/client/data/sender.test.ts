import { describe, expect, it } from 'vitest';
import { createApi } from '#client/data/api.ts';
import { createSender } from '#client/data/sender.ts';
import { createFakeClock, settle } from '../support/fakeClock.ts';
import { type Call, createFakeNetwork, json } from '../support/fakeNetwork.ts';

type Body = {
  id: string;
  kind: string;
  happenedAt: string;
  sentAt: string;
  body: { task?: string };
};
const bodyOf = (call: Call): Body => call.body as Body;

function senderWith(answer: Parameters<typeof createFakeNetwork>[0]) {
  const clock = createFakeClock();
  const { network, calls } = createFakeNetwork(answer);
  let minted = 0;
  const ids = {
    mint: () => {
      minted += 1;
      return String(minted).padStart(32, '0');
    },
  };
  const api = createApi(network, clock, 'secret');
  return { clock, calls, sender: createSender(api, clock, ids, 'larch') };
}

const recorded = (call: Call): Response =>
  json({ id: bodyOf(call).id, outcome: 'recorded', entry: 7, breaches: [] });
const done = (task: string) => ({ task, crew: 'right' });

describe('a command on its way', () => {
  it('carries the link, its id and both device times', async () => {
    const { sender, calls } = senderWith(recorded);
    const receipt = await sender.send('tell-finished', done('B9R'));
    expect(receipt).toMatchObject({ outcome: 'recorded', entry: 7 });
    expect(calls[0]?.path).toBe('/api/builds/larch/commands');
    expect(calls[0]?.headers.get('authorization')).toBe('Bearer secret');
    expect(calls[0]?.body).toMatchObject({
      id: '1'.padStart(32, '0'),
      happenedAt: '2026-11-25T13:33:00.000Z',
      sentAt: '2026-11-25T13:33:00.000Z',
    });
  });

  it('keeps its id and its hour through every repeat', async () => {
    const { sender, calls, clock } = senderWith((call, index) =>
      index < 3 ? 'down' : recorded(call),
    );
    const receipt = sender.send('tell-finished', done('B9R'));
    await settle();
    expect(sender.read()[0]?.state).toBe('waiting');
    await clock.advance(60_000);
    await receipt;
    expect(new Set(calls.map((call) => bodyOf(call).id)).size).toBe(1);
    expect(new Set(calls.map((call) => bodyOf(call).happenedAt)).size).toBe(1);
    expect(bodyOf(calls[3]!).sentAt).not.toBe(bodyOf(calls[0]!).sentAt);
    expect(sender.read()[0]).toMatchObject({ state: 'recorded', tries: 4 });
  });

  it('stays in sight as not sent for as long as the network is down', async () => {
    const { sender, clock } = senderWith(() => 'down');
    void sender.send('tell-finished', done('B9R'));
    await clock.advance(3_600_000);
    const [only] = sender.read();
    expect(only?.state).toBe('waiting');
    sender.dismiss(only!.id);
    expect(sender.read()).toHaveLength(1);
  });

  it('tries again at once when the network comes back', async () => {
    let up = false;
    const { sender, clock } = senderWith((call) => (up ? recorded(call) : 'down'));
    void sender.send('tell-finished', done('B9R'));
    await clock.advance(30_000);
    up = true;
    sender.nudge();
    await settle();
    await settle();
    expect(sender.read()[0]?.state).toBe('recorded');
  });

  it('is tried again at once with a halt beside it, when the network comes back', async () => {
    let up = false;
    const { sender, clock } = senderWith((call) => (up ? recorded(call) : 'down'));
    void sender.send('tell-finished', done('B9R'));
    void sender.send('halt', { why: '' });
    await clock.advance(60_000);
    up = true;
    sender.nudge();
    await settle();
    await settle();
    expect(sender.read().map(({ state }) => state)).toEqual(['recorded', 'recorded']);
  });

  it('is tried every few seconds when it is a halt, however long the network is down', async () => {
    const { sender, calls, clock } = senderWith(() => 'down');
    void sender.send('halt', { why: '' });
    await clock.advance(60_000);
    const before = calls.length;
    await clock.advance(10_000);
    expect(calls.length - before).toBeGreaterThanOrEqual(4);
  });

  it('shows what waits behind it as not sent too', async () => {
    const { sender } = senderWith(() => 'down');
    void sender.send('tell-finished', done('B9R'));
    void sender.send('tell-started', done('B10R'));
    await settle();
    void sender.send('tell-strength', { crew: 'right', fit: 6 });
    expect(sender.read().map(({ state }) => state)).toEqual(['waiting', 'waiting', 'waiting']);
  });

  it('is tried again when the server is busy', async () => {
    const { sender, clock } = senderWith((call, index) =>
      index === 0
        ? json({ code: 'too-many-requests', sentence: 'Wait a little.' }, 429)
        : recorded(call),
    );
    void sender.send('tell-finished', done('B9R'));
    await clock.advance(2000);
    expect(sender.read()[0]?.state).toBe('recorded');
  });
});

describe('a tell taken back before its answer', () => {
  it('leaves no trace when it was never tried', async () => {
    let up = false;
    const { sender, calls, clock } = senderWith((call) => (up ? recorded(call) : 'down'));
    void sender.send('tell-finished', done('B9R'));
    void sender.send('tell-finished', done('B10R'));
    await settle();
    sender.takeBack(sender.read()[1]!.id, 'slipped');
    expect(sender.read()).toHaveLength(1);
    up = true;
    await clock.advance(60_000);
    expect(calls.every((call) => bodyOf(call).body.task === 'B9R')).toBe(true);
  });

  it('is withdrawn as soon as it is in, because it may have arrived', async () => {
    let up = false;
    const { sender, calls, clock } = senderWith((call) => (up ? recorded(call) : 'down'));
    void sender.send('tell-finished', done('B9R'));
    await settle();
    sender.takeBack(sender.read()[0]!.id, 'slipped');
    up = true;
    await clock.advance(60_000);
    expect(bodyOf(calls.at(-1)!)).toMatchObject({
      kind: 'withdraw',
      body: { entry: 7, why: 'slipped' },
    });
  });

  it('is never a halt', async () => {
    const { sender } = senderWith(() => 'down');
    void sender.send('halt', { why: '' });
    await settle();
    sender.takeBack(sender.read()[0]!.id, 'slipped');
    expect(sender.read()[0]?.takenBack).toBeUndefined();
  });
});

describe('a refusal', () => {
  const no = { code: 'crew-not-off', sentence: 'Bracing has not told “off”.', of: ['brace'] };

  it('comes back as a value with its sentence when the ask is refused', async () => {
    const { sender } = senderWith((call) =>
      json({ id: bodyOf(call).id, outcome: 'refused', ...no }, 409),
    );
    const receipt = await sender.send('start-keep-off', { task: 'M5' });
    expect(receipt).toMatchObject({ outcome: 'refused', ...no });
    expect(sender.read()[0]).toMatchObject({ state: 'refused', receipt: no });
  });

  it('of the whole request reads the same', async () => {
    const { sender } = senderWith(() =>
      json({ code: 'link-withdrawn', sentence: 'Ask the leader for a new link.' }, 401),
    );
    const receipt = await sender.send('tell-finished', done('B9R'));
    expect(receipt).toMatchObject({ outcome: 'refused', code: 'link-withdrawn' });
  });

  it('can be taken off the page once seen', async () => {
    const { sender } = senderWith((call) =>
      json({ id: bodyOf(call).id, outcome: 'refused', ...no }, 409),
    );
    const { id } = await sender.send('start-keep-off', { task: 'M5' });
    sender.dismiss(id);
    expect(sender.read()).toEqual([]);
  });
});

describe('several commands', () => {
  it('go out in the order they were told', async () => {
    const { sender, calls, clock } = senderWith((call, index) =>
      index === 0 ? 'down' : recorded(call),
    );
    const both = [
      sender.send('tell-finished', done('B9R')),
      sender.send('tell-started', done('B10R')),
    ];
    await clock.advance(5000);
    await Promise.all(both);
    expect(calls.map((call) => bodyOf(call).body.task)).toEqual(['B9R', 'B9R', 'B10R']);
  });

  it('never hold up a halt', async () => {
    const { sender, calls } = senderWith((call) =>
      bodyOf(call).kind === 'halt' ? recorded(call) : 'down',
    );
    void sender.send('tell-finished', done('B9R'));
    await settle();
    const receipt = await sender.send('halt', { why: '' });
    expect(receipt.outcome).toBe('recorded');
    expect(calls).toHaveLength(2);
  });
});

describe('an ask that gets no answer', () => {
  it('is given up after half a minute, because it was a decision for then', async () => {
    const { sender, calls, clock } = senderWith(() => 'down');
    const sent = sender.send('start-keep-off', { task: 'M5' });
    await clock.advance(120_000);
    expect((await sent).outcome).toBe('no-answer');
    const asked = calls.length;
    await clock.advance(600_000);
    expect(calls).toHaveLength(asked);
    expect(sender.read()[0]?.state).toBe('no-answer');
  });
});
