import { createHash, timingSafeEqual } from 'node:crypto';
import type { Author } from '#domain/progress/command.ts';
import { type Refusal, refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { Ledger, StoredLink } from '../ledger/ledger.ts';

/** Who sends a request: the host of the server, or a person by the link of one build. */
export type Caller =
  | { readonly kind: 'host'; readonly link: string }
  | {
      readonly kind: 'member';
      readonly link: string;
      readonly build: string;
      readonly author: Author;
    };

/** What of a secret is kept: its sha256 in hex. A secret has 144 random bits, so no salt or slow hash is needed. */
export function secretHash(secret: string): string {
  return createHash('sha256').update(secret, 'utf8').digest('hex');
}

/** Who carries the link behind an `Authorization` header. */
export async function callerOf(
  ledger: Ledger,
  authorization: string | undefined,
): Promise<Result<Caller, Refusal>> {
  const [, secret] = /^Bearer ([\w-]{16,128})$/.exec(authorization ?? '') ?? [];
  const hash = secretHash(secret ?? '');
  const link = secret === undefined ? null : await ledger.linkWithHash(hash);
  if (!link || !timingSafeEqual(Buffer.from(link.secretHash), Buffer.from(hash))) {
    return bad(
      refusal('link-unknown', 'This link is not known here. Ask the leader for a new one.'),
    );
  }
  if (link.withdrawnAt !== null) {
    return bad(refusal('link-withdrawn', 'This link was withdrawn. Ask the leader for a new one.'));
  }
  return good(callerBy(link));
}

function callerBy({ id, build, role, name, crew }: StoredLink): Caller {
  if (role === 'host' || build === null) return { kind: 'host', link: id };
  const author: Author = crew === null ? { role, name } : { role, name, crew };
  return { kind: 'member', link: id, build, author };
}
