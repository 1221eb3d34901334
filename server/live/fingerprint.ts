import { createHash } from 'node:crypto';
import type { Author } from '#domain/progress/command.ts';
import type { CommandRequest } from '#shared/wire.ts';

/**
 * What makes two requests with one id the same: everything but the moment of sending, which differs with every
 * attempt. The order of fields does not count.
 */
export function fingerprint({ sentAt: _sent, ...rest }: CommandRequest, author: Author): string {
  return createHash('sha256')
    .update(JSON.stringify({ ...rest, author }, sorted))
    .digest('hex');
}

function sorted(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)));
}
