import fc from 'fast-check';
import { expect, it } from 'vitest';
import { DeltaRing } from '#server/live/deltaRing.ts';
import type { DeltaFrame } from '#shared/wire.ts';

const delta = (number: number, kind = 'told'): DeltaFrame => ({
  number,
  fold: 1,
  changed: {},
  tasks: {},
  gone: [],
  kind,
});

it('gives exactly the deltas after a number, or none at all', () => {
  const cases = fc.tuple(fc.nat(200), fc.nat(200), fc.nat(220));
  fc.assert(
    fc.property(cases, ([before, count, after]) => {
      const ring = new DeltaRing();
      const last = before + count;
      for (let number = before + 1; number <= last; number += 1) ring.push(delta(number));
      const numbers = ring
        .since(after, last)
        ?.map((event) => Number(/^id: (\d+)$/m.exec(event)?.[1]));
      if (after > last || last - after > Math.min(count, 64)) expect(numbers).toBeUndefined();
      else expect(numbers).toEqual(Array.from({ length: last - after }, (_, at) => after + 1 + at));
    }),
  );
});

it('sends a device for a snapshot rather than through a heap of large deltas', () => {
  const ring = new DeltaRing();
  for (const number of [1, 2, 3]) ring.push(delta(number, 'x'.repeat(100_000)));
  expect(ring.since(0, 3)).toBeNull();
  expect(ring.since(1, 3)).toHaveLength(2);
});
