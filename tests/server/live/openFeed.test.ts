import { EventEmitter } from 'node:events';
import type { ServerResponse } from 'node:http';
import { expect, it } from 'vitest';
import type { Feed } from '#server/live/feeds.ts';
import { openFeed } from '#server/live/openFeed.ts';

/** A reply to a device that takes nothing of what it is sent. */
class Stuck extends EventEmitter {
  writableLength = 0;
  destroyed = false;
  writableEnded = false;
  write(text: string): boolean {
    this.writableLength += text.length;
    return false;
  }
  destroy(): void {
    this.destroyed = true;
    this.emit('close');
  }
  end(): void {
    this.writableEnded = true;
    this.emit('close');
  }
}

function opened() {
  const raw = new Stuck();
  const gone: Feed[] = [];
  const feed = openFeed(raw as unknown as ServerResponse, { link: 'link', role: 'leader' }, (one) =>
    gone.push(one),
  );
  return { raw, gone, feed };
}

it('a device that does not take what it is sent is let go, and costs no more memory', () => {
  const { raw, gone, feed } = opened();
  for (let count = 0; count < 300; count += 1) feed.send('x'.repeat(10_000));
  expect(raw.destroyed).toBe(true);
  expect(raw.writableLength).toBeLessThan(1_100_000);
  expect(gone).toEqual([feed]);
});

it('a slow device is given its time', () => {
  const { raw, feed } = opened();
  for (let count = 0; count < 50; count += 1) feed.send('x'.repeat(10_000));
  expect(raw.destroyed).toBe(false);
});

it('nothing is written to a feed that was closed, and a broken pipe breaks nothing', () => {
  const { raw, gone, feed } = opened();
  feed.close();
  feed.send('late');
  raw.emit('error', new Error('EPIPE'));
  expect(raw.writableLength).toBe(0);
  expect(gone).toEqual([feed]);
});
