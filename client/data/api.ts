import type { Receipt, RefusalReply } from '#shared/wire.ts';
import type { Clock } from './ports/clock.ts';
import type { Network } from './ports/network.ts';

/** What became of a request. None of these is an exception: all three happen on a wet evening. */
export type Answer<Value> =
  | { readonly kind: 'ok'; readonly value: Value }
  | { readonly kind: 'refused'; readonly status: number; readonly refusal: RefusalReply }
  /** No answer, or none that makes sense: try again with the same id. */
  | { readonly kind: 'unreachable' };

export type Api = {
  readonly get: <Value>(path: string) => Promise<Answer<Value>>;
  /** `patience` is how many milliseconds an answer may take; 15 s when not given. */
  readonly post: <Value>(path: string, body: unknown, patience?: number) => Promise<Answer<Value>>;
  readonly remove: <Value>(path: string) => Promise<Answer<Value>>;
  /** Opens a stream of events, with a body as the answer to it; the caller reads it. */
  readonly open: (path: string, stop: AbortSignal, body?: unknown) => Promise<Response>;
};

/** Longer than a bad link needs, shorter than a person waits. */
const patience = 15_000;

/** One link's way to the server. `secret` is the link's, or the host's on the start page. */
export function createApi(network: Network, clock: Clock, secret: string): Api {
  const headers = (more: Record<string, string>): Record<string, string> =>
    secret === '' ? more : { ...more, authorization: `Bearer ${secret}` };

  async function ask<Value>(
    path: string,
    options: RequestInit,
    longest = patience,
  ): Promise<Answer<Value>> {
    const stop = new AbortController();
    const cancel = clock.after(longest, () => stop.abort());
    try {
      const response = await network(path, { ...options, signal: stop.signal, cache: 'no-store' });
      return await read<Value>(response);
    } catch {
      return { kind: 'unreachable' };
    } finally {
      cancel();
    }
  }

  return {
    get: (path) => ask(path, { method: 'GET', headers: headers({}) }),
    post: (path, body, longest) =>
      ask(
        path,
        {
          method: 'POST',
          headers: headers({ 'content-type': 'application/json' }),
          body: JSON.stringify(body),
        },
        longest,
      ),
    remove: (path) => ask(path, { method: 'DELETE', headers: headers({}) }),
    open: (path, stop, body) =>
      network(path, {
        ...(body === undefined
          ? { method: 'GET', headers: headers({ accept: 'text/event-stream' }) }
          : {
              method: 'POST',
              headers: headers({
                accept: 'text/event-stream',
                'content-type': 'application/json',
              }),
              body: JSON.stringify(body),
            }),
        signal: stop,
        cache: 'no-store',
      }),
  };
}

async function read<Value>(response: Response): Promise<Answer<Value>> {
  if (response.status === 204) return { kind: 'ok', value: undefined as Value };
  const body: unknown = await response.json();
  if (response.ok) return { kind: 'ok', value: body as Value };
  if (isRefusal(body)) return { kind: 'refused', status: response.status, refusal: body };
  return { kind: 'unreachable' };
}

export function isRefusal(body: unknown): body is RefusalReply {
  return (
    typeof body === 'object' &&
    body !== null &&
    'code' in body &&
    'sentence' in body &&
    typeof body.sentence === 'string'
  );
}

/** A refusal of the whole request (role, form) reads like a refusal of the command. */
export function receiptOf(id: string, answer: Answer<Receipt>): Receipt | null {
  if (answer.kind === 'ok') return answer.value;
  if (answer.kind === 'refused') return { ...answer.refusal, id, outcome: 'refused' };
  return null;
}
