import type { Wish } from '#domain/bridge/design.ts';
import { bad, good, type Result } from '#domain/result.ts';

/** Bays and nose as typed; empty is as the rules choose. */
export type TypedWish = { readonly bays: string; readonly nose: string };

export const noWish: TypedWish = { bays: '', nose: '' };

/** The wish, or which of its numbers is none. */
export function wishIn(typed: TypedWish): Result<Wish, keyof TypedWish> {
  for (const key of ['bays', 'nose'] as const) {
    if (!/^\d{0,3}$/.test(typed[key].trim())) return bad(key);
  }
  const bays = typed.bays.trim();
  const nose = typed.nose.trim();
  return good({
    ...(bays !== '' && { bays: Number(bays) }),
    ...(nose !== '' && { nose: Number(nose) }),
  });
}
