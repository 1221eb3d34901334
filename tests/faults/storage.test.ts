import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstBadEntry } from '#server/ledger/chain.ts';
import type { Ledger } from '#server/ledger/ledger.ts';
import type { Receipt, RefusalReply, Snapshot } from '#shared/wire.ts';
import { command, openTestBuild, type TestServer, testServer } from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';

/** How one append fails: nothing was kept, or everything was and only the word of it was lost. */
type Failure = 'before' | 'after';

/** A ledger whose next appends fail as planned; null goes well. */
function failingLedger(plan: (Failure | null)[]): Ledger {
  const ledger = memoryLedger();
  return {
    ...ledger,
    append: async (batch) => {
      const failure = plan.shift() ?? null;
      if (failure === 'before') throw new Error('disk full');
      const head = await ledger.append(batch);
      if (failure === 'after') throw new Error('the disk went away');
      return head;
    },
  };
}

async function opened(plan: (Failure | null)[]) {
  const server = await testServer({ ledger: failingLedger(plan) });
  const ford = await openTestBuild(server);
  const path = `/api/builds/${ford.build}`;
  const send = (request: unknown) =>
    server.ask<Receipt & RefusalReply>('POST', `${path}/commands`, ford.secret('left'), request);
  const state = async () =>
    (await server.ask<Snapshot>('GET', path, ford.secret('left'))).json.state;
  return { server, ford, send, state };
}

const nearMiss = (server: TestServer, what: string) => command(server, 'tell-near-miss', { what });

describe('a ledger that fails', () => {
  it.each<Failure>(['before', 'after'])(
    'is told as 503 with what to do, and the same tell again is kept once (failing %s it kept)',
    async (failure) => {
      const { server, ford, send, state } = await opened([null, failure]);
      const told = nearMiss(server, 'a plank slipped');
      const failed = await send(told);
      expect([failed.status, failed.json.code]).toEqual([503, 'storage-failed']);
      expect(failed.json.sentence).toMatch(/again/);
      expect(failed.text).not.toContain('disk');
      const again = await send(told);
      expect([again.status, again.json.outcome]).toEqual([200, 'recorded']);
      expect((await send(told)).text).toBe(again.text);
      expect((await state()).number).toBe(2);
      expect(await server.ledger.receipts(ford.build)).toHaveLength(2);
    },
  );

  it('leaves what is shown and what is kept the same', async () => {
    const { server, ford, send, state } = await opened([null, null, 'before', 'after', null]);
    for (const what of ['one', 'two', 'three', 'four']) await send(nearMiss(server, what));
    const shown = await state();
    expect(shown.number).toBe((await server.ledger.head(ford.build))?.number);
    expect(shown.events).toHaveLength(3);
  });

  it('never loses, doubles or reorders, whatever fails and however often devices try', async () => {
    const failures = fc.array(fc.constantFrom<Failure | null>('before', 'after', null), {
      maxLength: 12,
    });
    await fc.assert(
      fc.asyncProperty(failures, async (plan) => {
        const { server, ford, send, state } = await opened([null, ...plan]);
        const tells = ['a', 'b', 'c', 'd'].map((what) => nearMiss(server, what));
        await Promise.all(
          tells.map(async (told) => {
            while ((await send(told)).status !== 200);
          }),
        );
        const entries = await server.ledger.entries(ford.build, 0, 100);
        expect(firstBadEntry(entries)).toBeNull();
        const ids = entries.slice(1).map(({ text }) => JSON.parse(text).id);
        expect(ids.sort()).toEqual(tells.map(({ id }) => id).sort());
        expect((await state()).number).toBe(5);
        await server.app.close();
      }),
      { numRuns: 15 },
    );
  });

  it('that cannot even be read lets nobody in, and says so', async () => {
    const ledger = memoryLedger();
    let broken = false;
    const server = await testServer({
      ledger: {
        ...ledger,
        linkWithHash: async (hash) => {
          if (broken) throw new Error('disk gone');
          return ledger.linkWithHash(hash);
        },
      },
    });
    const ford = await openTestBuild(server);
    broken = true;
    const answer = await server.ask<RefusalReply>(
      'GET',
      `/api/builds/${ford.build}`,
      ford.secret('leader'),
    );
    expect([answer.status, answer.json.code]).toEqual([503, 'storage-failed']);
  });
});
