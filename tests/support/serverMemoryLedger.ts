import { chain, chainStart } from '#server/ledger/chain.ts';
import {
  type Head,
  type Ledger,
  LedgerConflict,
  type StoredEntry,
  type StoredLink,
  type StoredReceipt,
  type ToldForecast,
} from '#server/ledger/ledger.ts';

/** A ledger in memory, for tests that need many and for the contract to have a second, simpler answer. */
export function memoryLedger(): Ledger {
  const heads = new Map<string, Head>();
  const entries = new Map<string, StoredEntry[]>();
  const receipts = new Map<string, Map<string, StoredReceipt>>();
  const told = new Map<string, ToldForecast[]>();
  let links: StoredLink[] = [];

  const addLink = (link: StoredLink) => {
    if (links.some((other) => other.id === link.id || other.secretHash === link.secretHash)) {
      throw new Error('link exists');
    }
    links.push(link);
  };

  return {
    about: 'memory',
    heads: async () => [...heads.values()],
    head: async (build) => heads.get(build) ?? null,
    append: async ({ build, after, texts, receipt, links: opened = [] }) => {
      const head = heads.get(build) ?? { build, number: 0, hash: chainStart };
      if (head.number !== after) throw new LedgerConflict(`${after} is not ${head.number}`);
      const kept = receipts.get(build) ?? new Map<string, StoredReceipt>();
      if (kept.has(receipt.id)) throw new Error('receipt exists');
      const added = chain(head, texts);
      const last = added.at(-1) ?? head;
      const next = { build, number: last.number, hash: last.hash };
      for (const link of opened) addLink(link);
      heads.set(build, next);
      entries.set(build, [...(entries.get(build) ?? []), ...added]);
      receipts.set(build, kept.set(receipt.id, receipt));
      return next;
    },
    entries: async (build, after, limit) =>
      (entries.get(build) ?? []).filter(({ number }) => number > after).slice(0, limit),
    receipt: async (build, id) => receipts.get(build)?.get(id) ?? null,
    receipts: async (build) => [...(receipts.get(build)?.values() ?? [])],
    links: async (build) => links.filter((link) => link.build === build),
    linkWithHash: async (hash) => links.find(({ secretHash }) => secretHash === hash) ?? null,
    addLink: async (link) => addLink(link),
    withdrawLink: async (id, at) => {
      const live = links.some((link) => link.id === id && link.withdrawnAt === null);
      links = links.map((link) => (live && link.id === id ? { ...link, withdrawnAt: at } : link));
      return live;
    },
    keepTold: async (build, forecast) => {
      told.set(build, [...(told.get(build) ?? []), forecast]);
    },
    restore: async ({ build, texts, receipts: kept, links: ofBuild, told: forecasts }) => {
      if (heads.has(build)) throw new Error('build exists');
      const added = chain({ number: 0, hash: chainStart }, texts);
      const last = added.at(-1) ?? { number: 0, hash: chainStart };
      const head = { build, number: last.number, hash: last.hash };
      for (const link of ofBuild) addLink(link);
      heads.set(build, head);
      entries.set(build, added);
      receipts.set(build, new Map(kept.map((receipt) => [receipt.id, receipt])));
      told.set(build, [...forecasts]);
      return head;
    },
    told: async (build, limit) => (told.get(build) ?? []).slice(-limit),
    close: async () => {},
  };
}
