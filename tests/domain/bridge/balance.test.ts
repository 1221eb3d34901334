import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceBehind, type Girder } from '#domain/bridge/balance.ts';

/** The same by another way: metre by metre slices of a beam of uneven mass, instead of centres of parts. */
function balanceBySlices(girder: Girder, tip: number, bays: number, decked: number[]): number {
  const slices = 40;
  let mass = 0;
  let moment = 0;
  const lay = (front: number, length: number, kilograms: number) => {
    for (let slice = 0; slice < slices; slice += 1) {
      const x = front - ((slice + 0.5) / slices) * length;
      mass += kilograms / slices;
      moment += (kilograms / slices) * x;
    }
  };
  lay(tip, girder.noseLength, girder.nose * girder.masses.nose);
  for (let bay = 1; bay <= bays; bay += 1) {
    const front = tip - girder.noseLength - (bay - 1) * girder.bayLength;
    lay(front, girder.bayLength, girder.masses.bay);
    if (decked.includes(bay)) lay(front, girder.bayLength, girder.masses.deck);
  }
  return -moment / mass;
}

const length = fc.double({ min: 0.5, max: 12, noNaN: true });
const mass = fc.double({ min: 1, max: 9000, noNaN: true });
const girders = fc
  .record({
    bayLength: length,
    section: length,
    nose: fc.nat(12),
    bay: mass,
    deck: mass,
    each: mass,
  })
  .map(({ bayLength, section, nose, bay, deck, each }): Girder => {
    return { bayLength, nose, noseLength: nose * section, masses: { bay, deck, nose: each } };
  });
const launches = fc.record({
  girder: girders,
  tip: fc.double({ min: -30, max: 90, noNaN: true }),
  bays: fc.integer({ min: 1, max: 25 }),
  decked: fc.uniqueArray(fc.integer({ min: 1, max: 25 }), { maxLength: 12 }),
});

describe('the balance of a launch', () => {
  it('is the mean of all masses over their distances, reckoned slice by slice', () => {
    fc.assert(
      fc.property(launches, ({ girder, tip, bays, decked }) => {
        const expected = balanceBySlices(girder, tip, bays, decked);
        expect(balanceBehind(girder, { tip, bays, decked })).toBeCloseTo(expected, 6);
      }),
    );
  });

  it('comes nearer to the rollers by what the bridge moves', () => {
    fc.assert(
      fc.property(launches, length, ({ girder, tip, bays, decked }, moved) => {
        const before = balanceBehind(girder, { tip, bays, decked }) ?? 0;
        const after = balanceBehind(girder, { tip: tip + moved, bays, decked }) ?? 0;
        expect(before - after).toBeCloseTo(moved, 6);
      }),
    );
  });

  it('goes back when the rearmost bay is decked, as far as that bay lies behind it', () => {
    fc.assert(
      fc.property(launches, ({ girder, tip, bays }) => {
        const bare = balanceBehind(girder, { tip, bays, decked: [] }) ?? 0;
        const held = balanceBehind(girder, { tip, bays, decked: [bays] }) ?? 0;
        expect(held).toBeGreaterThanOrEqual(bare - 1e-9);
      }),
    );
  });

  it('is nowhere while nothing is built', () => {
    const girder = { bayLength: 3, nose: 0, noseLength: 0, masses: { bay: 1, deck: 1, nose: 0 } };
    expect(balanceBehind(girder, { tip: 0, bays: 0, decked: [] })).toBeNull();
  });

  it('at Larch Ford is half a metre ahead bare, and 2.3 m behind with the four rear bays decked', () => {
    const girder = {
      bayLength: 3,
      nose: 6,
      noseLength: 18,
      masses: { bay: 1150, deck: 950, nose: 280 },
    };
    // By hand, tonnes and metres. Nose: 6 x 0.28 = 1.68 at 32 - 9 = 23. Bays: 11 x 1.15 = 12.65 at 14 - 16.5 = -2.5.
    // Decks of bays 8 to 11: 0.95 each at -8.5, -11.5, -14.5, -17.5.
    const bare = (1.68 * 23 - 12.65 * 2.5) / (1.68 + 12.65);
    const decked = (1.68 * 23 - 12.65 * 2.5 - 0.95 * 52) / (1.68 + 12.65 + 3.8);
    expect(bare).toBeCloseTo(0.49, 2);
    expect(decked).toBeCloseTo(-2.34, 2);
    const at = { tip: 32, bays: 11 };
    expect(balanceBehind(girder, { ...at, decked: [] })).toBeCloseTo(-bare, 9);
    expect(balanceBehind(girder, { ...at, decked: [8, 9, 10, 11] })).toBeCloseTo(-decked, 9);
  });
});
