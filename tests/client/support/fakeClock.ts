import type { Clock } from '#client/data/ports/clock.ts';

export type FakeClock = Clock & { readonly advance: (milliseconds: number) => Promise<void> };

/** Lets everything that waits on a promise run. */
export function settle(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

/** A clock that moves only when told, and lets promises settle at every timer on the way. */
export function createFakeClock(start = '2026-11-25T13:33:00.000Z'): FakeClock {
  let now = Date.parse(start);
  let timers: { at: number; then: () => void }[] = [];
  return {
    now: () => now,
    after: (milliseconds, then) => {
      const timer = { at: now + milliseconds, then };
      timers.push(timer);
      return () => {
        timers = timers.filter((other) => other !== timer);
      };
    },
    advance: async (milliseconds) => {
      const end = now + milliseconds;
      await settle();
      for (;;) {
        const due = timers.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at)[0];
        if (!due) break;
        now = Math.max(now, due.at);
        timers = timers.filter((other) => other !== due);
        due.then();
        await settle();
      }
      now = end;
      await settle();
    },
  };
}
