import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readEvents, type StreamEvent } from '#client/data/eventStream.ts';

function bodyOf(pieces: readonly Uint8Array[]): ReadableStream<Uint8Array> {
  return new ReadableStream({
    start: (controller) => {
      for (const piece of pieces) controller.enqueue(piece);
      controller.close();
    },
  });
}

async function read(pieces: readonly Uint8Array[]): Promise<StreamEvent[]> {
  const events: StreamEvent[] = [];
  for await (const event of readEvents(bodyOf(pieces), () => {}, never)) events.push(event);
  return events;
}

const never = new AbortController().signal;
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const text =
  'id: 4\nevent: delta\ndata: {"a":"é"}\n\n: beat\n\nevent: beat\r\ndata: 1\r\ndata: 2\r\n\r\n';

describe('a text/event-stream', () => {
  it('gives event, id and data, joins data lines and passes over comments', async () => {
    expect(await read([bytes(text)])).toEqual([
      { event: 'delta', id: '4', data: '{"a":"é"}' },
      { event: 'beat', id: '4', data: '1\n2' },
    ]);
  });

  it('reads the same wherever the network cuts it', async () => {
    const whole = bytes(text);
    const expected = await read([whole]);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 1, max: whole.length - 1 })), async (cuts) => {
        const at = [0, ...[...new Set(cuts)].sort((a, b) => a - b), whole.length];
        const pieces = at.slice(1).map((end, index) => whole.slice(at[index], end));
        expect(await read(pieces)).toEqual(expected);
      }),
    );
  });

  it('drops an event that was cut off before its blank line', async () => {
    expect(await read([bytes('event: delta\ndata: {}\n')])).toEqual([]);
  });

  it('tells of every piece, comments included', async () => {
    let heard = 0;
    const pieces = [bytes(': beat\n\n'), bytes(': beat\n\n')];
    const hear = (): void => {
      heard += 1;
    };
    for await (const _event of readEvents(bodyOf(pieces), hear, never));
    expect(heard).toBe(2);
  });

  it('ends when told to hang up, though the other side says nothing', async () => {
    const stop = new AbortController();
    const silent = new ReadableStream<Uint8Array>();
    const reading = readEvents(silent, () => {}, stop.signal).next();
    stop.abort();
    expect((await reading).done).toBe(true);
  });
});
