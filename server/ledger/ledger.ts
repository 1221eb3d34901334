import type { Role } from '#domain/progress/command.ts';

/** Where a record ends: the number and chain hash of its last entry. */
export type Head = { readonly build: string; readonly number: number; readonly hash: string };

/** One entry as kept: its exact text, and the hash of the chain up to it. */
export type StoredEntry = {
  readonly number: number;
  readonly text: string;
  readonly hash: string;
};

/** The answer that a command got. `request` is the fingerprint of what was asked, `text` the exact reply. */
export type StoredReceipt = {
  readonly id: string;
  readonly request: string;
  readonly status: number;
  readonly text: string;
};

/** A link as kept: never the secret, only its hash. `build` is null for the host's link. */
export type StoredLink = {
  readonly id: string;
  readonly build: string | null;
  readonly role: Role | 'host';
  readonly name: string;
  readonly crew: string | null;
  /** sha256 of the secret, 64 hex digits. */
  readonly secretHash: string;
  readonly madeAt: string;
  readonly withdrawnAt: string | null;
};

/** A forecast as it was sent up, beside the record. `number` is the record number it was made on. */
export type ToldForecast = {
  readonly number: number;
  readonly at: string;
  readonly text: string;
};

/** What one command leaves: entries (none when it was refused) and its receipt, together or not at all. */
export type Batch = {
  readonly build: string;
  /** Number of the last entry known to whoever decided; the batch is refused when the record has moved on. */
  readonly after: number;
  /** Texts of the entries after+1, after+2 ... */
  readonly texts: readonly string[];
  readonly receipt: StoredReceipt;
  /** Links that come into being with the first entry of a build. */
  readonly links?: readonly StoredLink[];
};

/** All that is kept of one build, as it goes into a backup. */
export type KeptBuild = {
  readonly build: string;
  /** Texts of the entries 1, 2 ... */
  readonly texts: readonly string[];
  readonly receipts: readonly StoredReceipt[];
  readonly links: readonly StoredLink[];
  readonly told: readonly ToldForecast[];
};

/** Thrown when a batch was decided on a state that is not the record's last. A broken invariant: commands are serial. */
export class LedgerConflict extends Error {
  override readonly name = 'LedgerConflict';
}

/**
 * Where records are kept. Every promise rejects when the storage fails; then nothing of the call was kept,
 * or all of it was: the caller reads again before it goes on.
 */
export type Ledger = {
  /** What keeps the records and its version, for the log. */
  readonly about: string;
  /** Every build, oldest first. */
  heads(): Promise<Head[]>;
  head(build: string): Promise<Head | null>;
  /** Appends in one transaction and resolves to the new head. A batch with `after` 0 and entries opens the build. */
  append(batch: Batch): Promise<Head>;
  /** Entries with a number above `after`, in order, at most `limit`. */
  entries(build: string, after: number, limit: number): Promise<StoredEntry[]>;
  receipt(build: string, id: string): Promise<StoredReceipt | null>;
  receipts(build: string): Promise<StoredReceipt[]>;
  /** The links of a build, oldest first; of the host with null. */
  links(build: string | null): Promise<StoredLink[]>;
  linkWithHash(secretHash: string): Promise<StoredLink | null>;
  addLink(link: StoredLink): Promise<void>;
  /** Resolves to false when there is no such live link. */
  withdrawLink(id: string, at: string): Promise<boolean>;
  keepTold(build: string, told: ToldForecast): Promise<void>;
  /** Brings a build back from a backup, whole or not at all; rejects when there is a build of that name. */
  restore(kept: KeptBuild): Promise<Head>;
  /** Forecasts told, oldest first, at most the last `limit`. */
  told(build: string, limit: number): Promise<ToldForecast[]>;
  close(): Promise<void>;
};
