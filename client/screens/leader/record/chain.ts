import type { RecordPage } from '#shared/wireBuilds.ts';

type Kept = RecordPage['entries'][number];

/** The chain before the first entry. */
export const beforeAll = { number: 0, hash: '0'.repeat(64) };

/** Whether this browser reckons hashes: only on a secure line or on the machine itself. */
export function canCheck(): boolean {
  return globalThis.crypto?.subtle !== undefined;
}

/**
 * Follows the chain of a record over some entries: each hash is sha256 over the one before it, a line feed and the
 * entry's exact text, in hex. Resolves to the end of the chain, or to the number of the first entry that does not follow.
 */
export async function followChain(
  from: { readonly number: number; readonly hash: string },
  entries: readonly Kept[],
): Promise<
  | { readonly ok: true; readonly end: { readonly number: number; readonly hash: string } }
  | { readonly ok: false; readonly number: number }
> {
  let end = from;
  for (const { number, text, hash } of entries) {
    const expected = await sha256(`${end.hash}\n${text}`);
    if (number !== end.number + 1 || hash !== expected)
      return { ok: false, number: end.number + 1 };
    end = { number, hash };
  }
  return { ok: true, end };
}

async function sha256(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
