import type { ServerResponse } from 'node:http';
import type { Role } from '#domain/progress/command.ts';
import type { Feed } from './feeds.ts';

/** Bytes that may wait for a device before it is let go: it comes back and asks from its last number. */
const patience = 1_000_000;

/** A feed on a raw reply whose head is written. A device that does not take what it is sent is closed. */
export function openFeed(
  raw: ServerResponse,
  whose: { readonly link: string; readonly role: Role },
  onClose: (feed: Feed) => void,
): Feed {
  const feed: Feed = {
    link: whose.link,
    role: whose.role,
    send: (text) => {
      if (raw.destroyed || raw.writableEnded) return;
      raw.write(text);
      if (raw.writableLength > patience) raw.destroy();
    },
    close: () => raw.end(),
  };
  raw.on('close', () => onClose(feed));
  // A broken pipe is news about the device, not a fault of the server; `close` follows.
  raw.on('error', () => {});
  return feed;
}
