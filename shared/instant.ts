import { Type } from 'typebox';

/** An instant on the wire: ISO 8601, UTC, with a trailing Z. */
export const Instant = Type.String({
  format: 'date-time',
  pattern: '^\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(\\.\\d{1,9})?Z$',
});

/** Minted once on the device and sent with every attempt: 128 bit as 32 hex digits. */
export const CommandId = Type.String({ pattern: '^[0-9a-f]{32}$' });
