import { beforeEach, describe, expect, it } from 'vitest';
import { formReader } from '#server/form.ts';
import { Receipt, type Snapshot } from '#shared/wire.ts';
import type { RecordPage } from '#shared/wireBuilds.ts';
import {
  command,
  larchFordBridge,
  openTestBuild,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';

let server: TestServer;
let ford: TestBuild;
beforeEach(async () => {
  server = await testServer();
  ford = await openTestBuild(server);
});

const send = (who: string, request: unknown) =>
  server.ask<Receipt>('POST', `/api/builds/${ford.build}/commands`, ford.secret(who), request);

async function stateOf(): Promise<Snapshot['state']> {
  const path = `/api/builds/${ford.build}`;
  return (await server.ask<Snapshot>('GET', path, ford.secret('leader'))).json.state;
}

async function recordOf(): Promise<RecordPage> {
  const path = `/api/builds/${ford.build}/record`;
  return (await server.ask<RecordPage>('GET', path, ford.secret('leader'))).json;
}

const lastEntry = async () => JSON.parse((await recordOf()).entries.at(-1)?.text ?? '{}');

describe('a tell', () => {
  it('is recorded and answered with the number of its entry', async () => {
    const told = command(server, 'tell-started', { task: 'pegs', crew: 'left' });
    const answer = await send('left', told);
    expect(answer.json).toEqual({ id: told.id, outcome: 'recorded', entry: 2, breaches: [] });
    expect(answer.status).toBe(200);
    expect((await stateOf()).tasks.pegs?.status).toBe('at-work');
  });

  it('that breaks the order is recorded all the same, and says which rule it broke', async () => {
    const answer = await send(
      'left',
      command(server, 'tell-started', { task: 'move', crew: 'left' }),
    );
    expect(answer.status).toBe(200);
    expect(formReader(Receipt)(answer.json).ok).toBe(true);
    expect(answer.json).toMatchObject({ outcome: 'recorded' });
    expect(
      (answer.json as Extract<Receipt, { outcome: 'recorded' }>).breaches.length,
    ).toBeGreaterThan(0);
  });

  it('by radio keeps both who said it and who entered it', async () => {
    const told = command(
      server,
      'tell-started',
      { task: 'pegs', crew: 'left' },
      { saidBy: 'Ashby' },
    );
    await send('log', told);
    expect(await lastEntry()).toMatchObject({
      saidBy: 'Ashby',
      by: { role: 'log', name: 'Log keeper' },
    });
  });
});

describe('the same id', () => {
  it('gets the same answer byte for byte and changes nothing, even when it is sent later', async () => {
    const told = command(server, 'tell-started', { task: 'pegs', crew: 'left' });
    const first = await send('left', told);
    server.clock.advance(3);
    const again = await send('left', { ...told, sentAt: server.clock.now().toISOString() });
    expect([again.status, again.text]).toEqual([first.status, first.text]);
    expect((await recordOf()).head.number).toBe(2);
  });

  it('gets the same answer when ten copies arrive at once', async () => {
    const told = command(server, 'tell-started', { task: 'pegs', crew: 'left' });
    const answers = await Promise.all(Array.from({ length: 10 }, () => send('left', told)));
    expect(new Set(answers.map(({ text }) => text)).size).toBe(1);
    expect((await recordOf()).head.number).toBe(2);
  });

  it('gets the same refusal, even when it would be granted by now', async () => {
    const lift = command(server, 'lift-halt', { name: 'Venn' });
    const first = await send('leader', lift);
    expect(first.json).toMatchObject({ outcome: 'refused', code: 'no-halt' });
    await send('leader', command(server, 'halt', { why: 'a strap parted' }));
    const again = await send('leader', lift);
    expect([again.status, again.text]).toEqual([first.status, first.text]);
    expect((await stateOf()).halt).not.toBeNull();
  });

  it('with another body is refused and changes nothing', async () => {
    const told = command(server, 'tell-started', { task: 'pegs', crew: 'left' });
    await send('left', told);
    const before = await recordOf();
    const other = await send('left', { ...told, body: { task: 'pegs', crew: 'right' } });
    expect(other.status).toBe(409);
    expect(other.json).toMatchObject({ outcome: 'refused', code: 'id-used-otherwise' });
    expect(await recordOf()).toEqual(before);
  });

  it('means the same when the fields come in another order', async () => {
    const told = command(server, 'tell-started', { task: 'pegs', crew: 'left' });
    const first = await send('left', told);
    const again = await send('left', {
      ...Object.fromEntries(Object.entries(told).reverse()),
      body: { crew: 'left', task: 'pegs' },
    });
    expect(again.text).toBe(first.text);
  });

  it('is not shared between roles', async () => {
    const told = command(server, 'tell-near-miss', { what: 'a pin dropped' });
    await send('left', told);
    expect((await send('inspector', told)).json).toMatchObject({ code: 'id-used-otherwise' });
  });
});

describe('a refused command', () => {
  it('comes as a receipt with its code, sentence and status, and leaves no entry', async () => {
    const before = await recordOf();
    const answer = await send(
      'right',
      command(server, 'tell-started', { task: 'pegs', crew: 'left' }),
    );
    expect(answer.status).toBe(403);
    expect(formReader(Receipt)(answer.json).ok).toBe(true);
    expect(answer.json).toMatchObject({ outcome: 'refused', code: 'not-your-crew' });
    expect(await recordOf()).toEqual(before);
  });

  it('of wrong form names each field, and is kept like any other refusal', async () => {
    const told = command(server, 'tell-part', { task: 'pegs', crew: 'left', part: 2, half: true });
    const answer = await send('left', told);
    expect(answer.status).toBe(400);
    expect(answer.json).toMatchObject({ outcome: 'refused', code: 'form-wrong' });
    const { faults = [] } = answer.json as Extract<Receipt, { outcome: 'refused' }>;
    expect(faults.map(({ path }) => path).sort()).toEqual(['/half', '/part']);
    expect((await send('left', told)).text).toBe(answer.text);
  });

  it('cannot open a build inside a build', async () => {
    const opening = { ...command(server, 'halt', {}), kind: 'open-build' };
    const answer = await send('leader', opening);
    expect([answer.status, answer.json]).toMatchObject([400, { code: 'form-wrong' }]);
  });
});

describe('times', () => {
  it('are corrected by the skew of a clock that is ahead or behind', async () => {
    const received = server.clock.now().getTime();
    for (const skew of [-90, 45]) {
      const device = (minutes: number) =>
        new Date(received + (skew + minutes) * 60_000).toISOString();
      const told = command(
        server,
        'tell-near-miss',
        { what: 'x' },
        { happenedAt: device(-10), sentAt: device(0) },
      );
      await send('left', told);
      expect(await lastEntry()).toMatchObject({
        happenedAt: new Date(received - 10 * 60_000).toISOString(),
        receivedAt: new Date(received).toISOString(),
      });
    }
  });

  it('never lie after the receipt', async () => {
    const now = server.clock.now();
    const ahead = new Date(now.getTime() + 5 * 60_000).toISOString();
    const told = command(server, 'tell-near-miss', { what: 'x' }, { happenedAt: ahead });
    await send('left', told);
    expect(await lastEntry()).toMatchObject({ happenedAt: now.toISOString() });
  });
});

describe('choosing a bridge', () => {
  it('names a kit, and the server designs and expands it into the record', async () => {
    const { ground, kit } = larchFordBridge;
    const answer = await send('leader', command(server, 'choose-bridge', { ground, kit }));
    expect(answer.json).toMatchObject({ outcome: 'recorded' });
    const { bridge, work } = await stateOf();
    expect(bridge?.kit.name).toBe('heron');
    expect(work.tasks.length).toBeGreaterThan(100);
  });

  it('that cannot be built is refused with what binds', async () => {
    const { ground, kit } = larchFordBridge;
    const answer = await send(
      'leader',
      command(server, 'choose-bridge', { ground: { ...ground, gap: 150 }, kit }),
    );
    expect([answer.status, answer.json]).toMatchObject([422, { code: 'bridge-impossible' }]);
    expect(answer.json).toMatchObject({ of: expect.arrayContaining(['gap']) });
    expect((await recordOf()).head.number).toBe(1);
  });

  it('of a kit that is not here says which kits are', async () => {
    const { ground } = larchFordBridge;
    const answer = await send('leader', command(server, 'choose-bridge', { ground, kit: 'crane' }));
    expect(answer.json).toMatchObject({ code: 'kit-unknown' });
    expect(answer.json).toMatchObject({ sentence: expect.stringContaining('heron') });
  });
});
