import type { Network } from '#client/data/ports/network.ts';

export type Call = {
  readonly path: string;
  readonly method: string;
  readonly body: unknown;
  readonly headers: Headers;
};

type Reply = Response | 'down';

/** Answers each request by a function of the call, and remembers the calls. */
export function createFakeNetwork(answer: (call: Call, index: number) => Reply) {
  const calls: Call[] = [];
  const network: Network = async (path, options) => {
    const call = {
      path,
      method: options.method ?? 'GET',
      body: typeof options.body === 'string' ? JSON.parse(options.body) : null,
      headers: new Headers(options.headers),
    };
    calls.push(call);
    const reply = answer(call, calls.length - 1);
    if (reply === 'down') throw new TypeError('fetch failed');
    return reply;
  };
  return { network, calls };
}

export function json(body: unknown, status = 200): Response {
  return new Response(JSON.stringify(body), {
    status,
    headers: { 'content-type': 'application/json' },
  });
}

/** A stream that the test feeds piece by piece. */
export function createStream() {
  let feed: ReadableStreamDefaultController<Uint8Array> | undefined;
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => {
      feed = controller;
    },
  });
  const encoder = new TextEncoder();
  return {
    response: new Response(body, { headers: { 'content-type': 'text/event-stream' } }),
    say: (text: string) => feed?.enqueue(encoder.encode(text)),
    event: (name: string, data: unknown, id?: number) =>
      feed?.enqueue(
        encoder.encode(
          `${id === undefined ? '' : `id: ${id}\n`}event: ${name}\ndata: ${JSON.stringify(data)}\n\n`,
        ),
      ),
    end: () => feed?.close(),
    breakOff: () => feed?.error(new TypeError('network error')),
  };
}
