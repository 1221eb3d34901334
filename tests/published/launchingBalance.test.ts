import { describe, expect, it } from 'vitest';
import { balanceBehind, type Girder } from '#domain/bridge/balance.ts';

// US Army FM 5-277 (panel bridge, public domain): the centre of gravity of nose and bridge lies behind the front
// rollers until the nose is over the landing rollers. The rule is quoted from memory; the sums below are reckoned by
// hand for a span of 80 ft, bays and nose sections of 10 ft, eight bays, masses in short tons. Feet throughout.
const span = 80;
const bays = 8;

function girder(nose: number, bay: number, deck = 0): Girder {
  return { bayLength: 10, nose, noseLength: nose * 10, masses: { bay, deck, nose: 1 } };
}

describe('launching balance of a panel bridge', () => {
  it.each([
    ['6 nose sections, all bays alike', girder(6, 2.76), [], 141.6 / 28.08, 5.04],
    ['5 nose sections, all bays alike', girder(5, 2.76), [], -54.2 / 27.08, -2.0],
    // Undecked bays 1.45, decked 2.76: the front three bare.
    ['5, front three bays bare', girder(5, 1.45, 1.31), [4, 5, 6, 7, 8], 4.75 / 23.15, 0.21],
    ['5, all bays bare', girder(5, 1.45), [], -159 / 16.6, -9.58],
  ])('%s', (_, built, decked, exact, printed) => {
    const balance = balanceBehind(built, { tip: span, bays, decked });
    expect(balance).toBeCloseTo(exact, 6);
    expect(balance).toBeCloseTo(printed, 2);
  });

  it('decking the tail helps, decking the front bays hurts', () => {
    const balance = (decked: number[]) =>
      balanceBehind(girder(5, 1.45, 1.31), { tip: span, bays, decked }) ?? 0;
    expect(balance([8])).toBeGreaterThan(balance([]));
    expect(balance([1])).toBeLessThan(balance([]));
  });
});
