/** One event of a feed, as a device reads it. */
type FeedEvent = {
  readonly event: string;
  readonly id: string | null;
  readonly data: unknown;
};

export type TestFeed = {
  readonly status: number;
  /** The events so far, in order. */
  readonly events: readonly FeedEvent[];
  /** Resolves once an event passes, at once when one has; rejects after 5 s. */
  until(passes: (event: FeedEvent) => boolean): Promise<FeedEvent>;
  /** Resolves when the server ends the feed. */
  readonly ended: Promise<void>;
  close(): void;
};

/** Opens a feed with `fetch`, as the pages do. */
export async function openTestFeed(url: string, secret: string): Promise<TestFeed> {
  const stop = new AbortController();
  const response = await fetch(url, {
    headers: { authorization: `Bearer ${secret}` },
    signal: stop.signal,
  });
  const events: FeedEvent[] = [];
  const waiting = new Set<() => void>();

  const read = async () => {
    if (response.headers.get('content-type')?.startsWith('text/event-stream') !== true) return;
    const decoder = new TextDecoder();
    let rest = '';
    for await (const piece of response.body ?? []) {
      rest += decoder.decode(piece, { stream: true });
      const blocks = rest.split('\n\n');
      rest = blocks.pop() ?? '';
      events.push(...blocks.map(parseEvent));
      for (const look of waiting) look();
    }
  };
  const ended = read().catch(() => {});

  return {
    status: response.status,
    events,
    ended,
    close: () => stop.abort(),
    until: (passes) =>
      new Promise((resolve, reject) => {
        const done = () => {
          clearTimeout(timer);
          waiting.delete(look);
        };
        const look = () => {
          const found = events.find(passes);
          if (!found) return;
          done();
          resolve(found);
        };
        const timer = setTimeout(() => {
          done();
          reject(new Error(`the feed said only ${JSON.stringify(events).slice(0, 500)}`));
        }, 5000);
        waiting.add(look);
        look();
      }),
  };
}

function parseEvent(block: string): FeedEvent {
  const field = (name: string) =>
    block
      .split('\n')
      .find((line) => line.startsWith(`${name}: `))
      ?.slice(name.length + 2);
  return {
    event: field('event') ?? 'message',
    id: field('id') ?? null,
    data: JSON.parse(field('data') ?? 'null'),
  };
}
