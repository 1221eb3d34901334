/** What a pure function answers when bad input is an expected outcome: a value, or why there is none. */
export type Result<Value, Reason> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly reason: Reason };

/** Wraps a value as a good result. */
export function good<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

/** Wraps a reason as a refused result. */
export function bad<Reason>(reason: Reason): { readonly ok: false; readonly reason: Reason } {
  return { ok: false, reason };
}
