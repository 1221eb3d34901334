/** One event of a `text/event-stream`. */
export type StreamEvent = {
  readonly event: string;
  readonly id: string | null;
  readonly data: string;
};

/**
 * Reads a `text/event-stream` (HTML standard, section 9.2.6) as it arrives. Comment lines and `retry:` carry nothing
 * for us; `onBytes` hears of every piece that arrives, comments included, because they show that the line lives.
 * Ends when the stream does or `stop` aborts.
 */
export async function* readEvents(
  body: ReadableStream<Uint8Array>,
  onBytes: () => void,
  stop: AbortSignal,
): AsyncGenerator<StreamEvent> {
  const reader = body.getReader();
  const decoder = new TextDecoder();
  let rest = '';
  let event = 'message';
  let id: string | null = null;
  let data: string[] = [];
  // Only the reader can hang up: the stream itself is locked while it is read.
  const hangUp = (): void => void reader.cancel().catch(() => {});
  stop.addEventListener('abort', hangUp, { once: true });
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      onBytes();
      rest += decoder.decode(value, { stream: true });
      const lines = rest.split(/\r\n|\n|\r(?!$)/);
      rest = lines.pop() ?? '';
      for (const line of lines) {
        if (line === '') {
          if (data.length > 0) yield { event, id, data: data.join('\n') };
          event = 'message';
          data = [];
          continue;
        }
        const colon = line.indexOf(':');
        const field = colon < 0 ? line : line.slice(0, colon);
        const text = colon < 0 ? '' : line.slice(colon + 1).replace(/^ /, '');
        if (field === 'event') event = text;
        else if (field === 'data') data.push(text);
        else if (field === 'id') id = text;
      }
    }
  } finally {
    stop.removeEventListener('abort', hangUp);
    hangUp();
  }
}
