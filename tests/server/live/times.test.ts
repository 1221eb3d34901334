import fc from 'fast-check';
import { expect, it } from 'vitest';
import { happenedAtCorrected } from '#server/live/times.ts';

const iso = (time: number) => new Date(time).toISOString();
const time = fc.integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2040, 0, 1) });
const hours = fc.integer({ min: -12 * 3_600_000, max: 12 * 3_600_000 });

it('what a wrong clock says happened so long before sending, happened so long before arrival', () => {
  fc.assert(
    fc.property(time, hours, fc.nat(3_600_000), (received, skew, ago) => {
      const sentAt = iso(received + skew);
      const happenedAt = iso(received + skew - ago);
      expect(happenedAtCorrected({ happenedAt, sentAt }, iso(received))).toBe(iso(received - ago));
    }),
  );
});

it('nothing happened after it was heard of', () => {
  fc.assert(
    fc.property(time, hours, hours, (received, skew, ahead) => {
      const sentAt = iso(received + skew);
      const happenedAt = iso(received + skew + ahead);
      const corrected = happenedAtCorrected({ happenedAt, sentAt }, iso(received));
      expect(Date.parse(corrected)).toBeLessThanOrEqual(received);
    }),
  );
});
