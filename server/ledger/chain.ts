import { createHash } from 'node:crypto';
import type { StoredEntry } from './ledger.ts';

/** The hash before the first entry. */
export const chainStart = '0'.repeat(64);

/** Hash of a record up to and with `text`: sha256 over the previous hash, a line feed and the exact text, in hex. */
function chainHash(previous: string, text: string): string {
  return createHash('sha256').update(`${previous}\n${text}`, 'utf8').digest('hex');
}

/** Turns texts into entries that follow a head. */
export function chain(
  head: { readonly number: number; readonly hash: string },
  texts: readonly string[],
): StoredEntry[] {
  let { number, hash } = head;
  return texts.map((text) => {
    number += 1;
    hash = chainHash(hash, text);
    return { number, text, hash };
  });
}

export type ChainFault = { readonly number: number; readonly sentence: string };

/** The first entry that does not follow from the one before it, or null when the whole chain holds. */
export function firstBadEntry(entries: readonly StoredEntry[]): ChainFault | null {
  let before = { number: 0, hash: chainStart };
  for (const entry of entries) {
    const number = before.number + 1;
    if (entry.number !== number) {
      return {
        number,
        sentence: `entry ${number} is missing: ${entry.number} stands in its place`,
      };
    }
    if (chainHash(before.hash, entry.text) !== entry.hash) {
      return { number, sentence: `entry ${number} does not match its hash: it was changed` };
    }
    if (numberInside(entry.text) !== number) {
      return { number, sentence: `entry ${number} does not carry its own number in its text` };
    }
    before = entry;
  }
  return null;
}

function numberInside(text: string): unknown {
  try {
    return (JSON.parse(text) as { number?: unknown } | null)?.number;
  } catch {
    return undefined;
  }
}
