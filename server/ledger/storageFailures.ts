import type { Ledger } from './ledger.ts';

/** The ledger failed: nothing of what was asked counts until the record was read again, and the device may retry. */
export class StorageFailure extends Error {
  override readonly name = 'StorageFailure';
}

/** The same ledger, whose every failure is a `StorageFailure` with the first error as its cause. */
export function withStorageFailures(ledger: Ledger): Ledger {
  const named =
    <Given extends unknown[], Value>(work: (...given: Given) => Promise<Value>) =>
    async (...given: Given): Promise<Value> => {
      try {
        return await work(...given);
      } catch (error) {
        throw new StorageFailure('the ledger failed', { cause: error });
      }
    };
  return {
    about: ledger.about,
    heads: named(ledger.heads),
    head: named(ledger.head),
    append: named(ledger.append),
    entries: named(ledger.entries),
    receipt: named(ledger.receipt),
    receipts: named(ledger.receipts),
    links: named(ledger.links),
    linkWithHash: named(ledger.linkWithHash),
    addLink: named(ledger.addLink),
    withdrawLink: named(ledger.withdrawLink),
    keepTold: named(ledger.keepTold),
    restore: named(ledger.restore),
    told: named(ledger.told),
    close: named(ledger.close),
  };
}
