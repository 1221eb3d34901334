import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { firstBadEntry } from '#server/ledger/chain.ts';
import {
  type Batch,
  type Ledger,
  LedgerConflict,
  type StoredLink,
  type StoredReceipt,
} from '#server/ledger/ledger.ts';

/** A receipt whose only point is its id. */
export function receiptFor(id: string): StoredReceipt {
  return { id, request: `asked ${id}`, status: 200, text: `{"id":"${id}"}` };
}

/** The text of an entry as far as the ledger cares. */
export function entryText(number: number, word = 'told'): string {
  return JSON.stringify({ number, word });
}

const link: StoredLink = {
  id: 'link-1',
  build: null,
  role: 'host',
  name: 'Host',
  crew: null,
  secretHash: 'a'.repeat(64),
  madeAt: '2026-03-01T10:00:00.000Z',
  withdrawnAt: null,
};

/** What every ledger must do, whatever it keeps its records in. */
export function ledgerContract(kind: string, open: () => Promise<Ledger>): void {
  describe(`a ledger in ${kind}`, () => {
    let ledger: Ledger;
    beforeEach(async () => {
      ledger = await open();
    });
    afterEach(async () => {
      await ledger.close();
    });

    const opened = (build = 'ford'): Promise<unknown> =>
      ledger.append({ build, after: 0, texts: [entryText(1)], receipt: receiptFor('open') });

    it('knows no build before one is opened', async () => {
      expect(await ledger.heads()).toEqual([]);
      expect(await ledger.head('ford')).toBeNull();
      expect(await ledger.entries('ford', 0, 10)).toEqual([]);
      expect(await ledger.receipt('ford', 'open')).toBeNull();
    });

    it('gives back exactly the text it was given', async () => {
      const texts = ['{"number":1,"word":"“Ünïcode”, \\u0000 and  spaces "}', entryText(2)];
      await ledger.append({ build: 'ford', after: 0, texts, receipt: receiptFor('open') });
      const kept = await ledger.entries('ford', 0, 10);
      expect(kept.map(({ text }) => text)).toEqual(texts);
    });

    it('hashes the previous hash, a line feed and the text', async () => {
      await opened();
      await ledger.append({
        build: 'ford',
        after: 1,
        texts: [entryText(2)],
        receipt: receiptFor('a'),
      });
      const sha = (text: string) => createHash('sha256').update(text).digest('hex');
      const first = sha(`${'0'.repeat(64)}\n${entryText(1)}`);
      const second = sha(`${first}\n${entryText(2)}`);
      expect((await ledger.entries('ford', 0, 10)).map(({ hash }) => hash)).toEqual([
        first,
        second,
      ]);
      expect(await ledger.head('ford')).toMatchObject({ number: 2, hash: second });
    });

    it('refuses a batch that was decided on an older state, and keeps nothing of it', async () => {
      await opened();
      const stale = { build: 'ford', after: 0, texts: [entryText(1)], receipt: receiptFor('b') };
      await expect(ledger.append(stale)).rejects.toThrow(LedgerConflict);
      expect(await ledger.head('ford')).toMatchObject({ number: 1 });
      expect(await ledger.receipt('ford', 'b')).toBeNull();
    });

    it('keeps neither entry nor receipt when one of them cannot be kept', async () => {
      await opened();
      const twice = { build: 'ford', after: 1, texts: [entryText(2)], receipt: receiptFor('open') };
      await expect(ledger.append(twice)).rejects.toThrow();
      expect(await ledger.head('ford')).toMatchObject({ number: 1 });
      expect(await ledger.entries('ford', 1, 10)).toEqual([]);
    });

    it('keeps the receipt of a refusal without moving the record', async () => {
      await opened();
      const refused = { ...receiptFor('no'), status: 409, text: '{"outcome":"refused"}' };
      await ledger.append({ build: 'ford', after: 1, texts: [], receipt: refused });
      expect(await ledger.head('ford')).toMatchObject({ number: 1 });
      expect(await ledger.receipt('ford', 'no')).toEqual(refused);
    });

    it('keeps builds apart', async () => {
      await opened('ford');
      await opened('weir');
      await ledger.append({
        build: 'weir',
        after: 1,
        texts: [entryText(2)],
        receipt: receiptFor('w'),
      });
      expect((await ledger.heads()).map(({ build, number }) => [build, number])).toEqual([
        ['ford', 1],
        ['weir', 2],
      ]);
      expect(await ledger.receipt('ford', 'w')).toBeNull();
    });

    it('reads on from a number, at most as many as asked', async () => {
      const texts = [1, 2, 3, 4, 5].map((number) => entryText(number));
      await ledger.append({ build: 'ford', after: 0, texts, receipt: receiptFor('open') });
      expect((await ledger.entries('ford', 2, 2)).map(({ number }) => number)).toEqual([3, 4]);
    });

    it('opens a build together with its links, or not at all', async () => {
      const ofBuild = { ...link, id: 'link-2', build: 'ford', role: 'leader' as const };
      const batch: Batch = {
        build: 'ford',
        after: 0,
        texts: [entryText(1)],
        receipt: receiptFor('open'),
        links: [ofBuild],
      };
      await ledger.addLink({ ...link, secretHash: ofBuild.secretHash });
      await expect(ledger.append(batch)).rejects.toThrow();
      expect(await ledger.head('ford')).toBeNull();
      const free = { ...ofBuild, secretHash: 'b'.repeat(64) };
      await ledger.append({ ...batch, links: [free] });
      expect(await ledger.links('ford')).toEqual([free]);
    });

    it('finds a link by the hash of its secret, also once withdrawn', async () => {
      await ledger.addLink(link);
      expect(await ledger.linkWithHash(link.secretHash)).toEqual(link);
      expect(await ledger.linkWithHash('c'.repeat(64))).toBeNull();
      const at = '2026-03-01T11:00:00.000Z';
      expect(await ledger.withdrawLink(link.id, at)).toBe(true);
      expect(await ledger.withdrawLink(link.id, at)).toBe(false);
      expect(await ledger.linkWithHash(link.secretHash)).toEqual({ ...link, withdrawnAt: at });
      expect(await ledger.links(null)).toHaveLength(1);
    });

    it('keeps the forecasts told in order and gives back the last of them', async () => {
      await opened();
      for (const number of [1, 2, 3]) {
        await ledger.keepTold('ford', {
          number,
          at: `2026-03-01T10:0${number}:00.000Z`,
          text: '{}',
        });
      }
      expect((await ledger.told('ford', 2)).map(({ number }) => number)).toEqual([2, 3]);
    });

    it('brings a build back whole, and only where there is none', async () => {
      await opened('ford');
      const head = await ledger.head('ford');
      const ofBuild = { ...link, id: 'link-3', build: 'weir', secretHash: 'd'.repeat(64) };
      const kept = {
        build: 'weir',
        texts: [entryText(1)],
        receipts: [receiptFor('open')],
        links: [ofBuild],
        told: [{ number: 1, at: '2026-03-01T10:00:00.000Z', text: '{}' }],
      };
      expect(await ledger.restore(kept)).toEqual({ ...head, build: 'weir' });
      expect(await ledger.receipts('weir')).toEqual(kept.receipts);
      expect(await ledger.links('weir')).toEqual([ofBuild]);
      expect(await ledger.told('weir', 10)).toEqual(kept.told);
      await expect(ledger.restore({ ...kept, links: [], texts: [] })).rejects.toThrow();
      expect(await ledger.head('weir')).toMatchObject({ number: 1 });
    });

    it('numbers without gaps and chains without a break, whatever the batches', async () => {
      let run = 0;
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 8 }),
          async (sizes) => {
            run += 1;
            const build = `build-${run}`;
            let after = 0;
            for (const [index, size] of sizes.entries()) {
              const texts = Array.from({ length: size }, (_, place) =>
                entryText(after + 1 + place),
              );
              await ledger.append({ build, after, texts, receipt: receiptFor(`r${index}`) });
              after += size;
            }
            const kept = await ledger.entries(build, 0, 1000);
            expect(kept.map(({ number }) => number)).toEqual(
              Array.from({ length: after }, (_, place) => place + 1),
            );
            expect(firstBadEntry(kept)).toBeNull();
            expect(await ledger.receipts(build)).toHaveLength(sizes.length);
          },
        ),
        { numRuns: 25 },
      );
    });
  });
}
