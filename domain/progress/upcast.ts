import type { CommandBody, CommandKind } from './command.ts';
import { type Entry, type EntryKind, entryKinds } from './entry.ts';

/** Brings an entry of one version to the next: the same fact in the words of the next version. */
export type Step = (entry: Entry) => Entry;

/** For each kind that ever changed, the step from version 1 to 2, from 2 to 3, and so on. */
export type Steps = Readonly<Partial<Record<string, readonly Step[]>>>;

/** No kind has changed yet: every entry is of version 1. */
const steps: Steps = {};

/** An entry that this program knows, with the body of its kind at its present version. */
export type KnownEntry = {
  [Kind in CommandKind]: Omit<Entry, 'kind' | 'body'> & {
    readonly kind: (typeof entryKinds)[Kind];
    readonly body: CommandBody<Kind>;
  };
}[CommandKind];

const kinds: ReadonlySet<string> = new Set<EntryKind>(Object.values(entryKinds));

/** The version in which entries of a kind are written now. */
export function presentVersion(kind: string, known: Steps = steps): number {
  return 1 + (known[kind]?.length ?? 0);
}

/**
 * An old entry in its present version. The record itself is never rewritten: this happens on every fold.
 * An entry of a later version than this program knows is left as it is.
 */
export function upcast(entry: Entry, known: Steps = steps): Entry {
  let present = entry;
  for (const step of (known[entry.kind] ?? []).slice(entry.version - 1))
    present = { ...step(present), version: present.version + 1 };
  return present;
}

/** The entry in its present version, or null when its kind or its version is one this program does not know. */
export function knownEntry(entry: Entry): KnownEntry | null {
  const present = upcast(entry);
  const readable = kinds.has(present.kind) && present.version === presentVersion(present.kind);
  // The ledger keeps only what `decide` wrote, whose bodies were checked against the schemas of `command.ts`.
  return readable ? (present as KnownEntry) : null;
}
