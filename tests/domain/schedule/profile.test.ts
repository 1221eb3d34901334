import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Profile } from '#domain/schedule/profile.ts';

const horizon = 120;

/** The same by brute force: what is in use in each second. */
class Seconds {
  readonly used: number[];
  readonly #capacity: number;

  constructor(capacity: number, busy: readonly { until: number; amount: number }[]) {
    this.#capacity = capacity;
    this.used = Array.from({ length: 3 * horizon }, (_, second) =>
      busy.reduce((sum, { until, amount }) => sum + (second < until ? amount : 0), 0),
    );
  }

  fits(start: number, length: number, amount: number): boolean {
    return this.used.slice(start, start + length).every((used) => used + amount <= this.#capacity);
  }

  hold(start: number, finish: number, amount: number): void {
    for (let second = start; second < finish; second += 1) this.used[second]! += amount;
  }
}

const holding = fc.record({
  at: fc.integer({ min: 0, max: horizon / 2 }),
  length: fc.integer({ min: 1, max: 12 }),
  amount: fc.integer({ min: 1, max: 5 }),
});
const busy = fc.array(
  fc.record({ until: fc.integer({ min: 1, max: 20 }), amount: fc.integer({ min: 1, max: 4 }) }),
  { maxLength: 3 },
);

describe('A profile of what is in use', () => {
  it('finds the earliest start that counting seconds finds', () => {
    fc.assert(
      fc.property(fc.array(holding, { maxLength: 12 }), busy, (holdings, before) => {
        const profile = new Profile(Int32Array.of(5), Int32Array.of(holdings.length), [before]);
        const seconds = new Seconds(5, before);
        for (const { at, length, amount } of holdings) {
          const start = profile.earliest(0, at, length, amount);
          let expected = at;
          while (!seconds.fits(expected, length, amount)) expected += 1;
          expect(start).toBe(expected);
          profile.hold(0, start, start + length, amount);
          seconds.hold(start, start + length, amount);
        }
      }),
    );
  });

  it('finds the latest finish that counting seconds finds', () => {
    fc.assert(
      fc.property(fc.array(holding, { maxLength: 8 }), (holdings) => {
        const profile = new Profile(Int32Array.of(5), Int32Array.of(holdings.length), [[]]);
        const seconds = new Seconds(5, []);
        for (const { at, length, amount } of holdings) {
          const due = 2 * horizon + at;
          const finish = profile.latest(0, due, length, amount);
          let expected = due;
          while (!seconds.fits(expected - length, length, amount)) expected -= 1;
          expect(finish).toBe(expected);
          profile.hold(0, finish - length, finish, amount);
          seconds.hold(finish - length, finish, amount);
        }
      }),
    );
  });

  it('is free again after it is cleared, but for what is busy', () => {
    const profile = new Profile(Int32Array.of(5, 2), Int32Array.of(1, 1), [
      [{ until: 7, amount: 3 }],
      [],
    ]);
    profile.hold(0, 10, 20, 5);
    profile.hold(1, 0, 9, 2);
    profile.clear(true);
    expect(profile.earliest(0, 10, 10, 5)).toBe(10);
    expect(profile.earliest(0, 0, 10, 3)).toBe(7);
    expect(profile.earliest(1, 0, 10, 2)).toBe(0);
    profile.clear(false);
    expect(profile.earliest(0, 0, 10, 5)).toBe(0);
  });
});
