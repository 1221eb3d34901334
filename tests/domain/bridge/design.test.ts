import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designBridge } from '#domain/bridge/design.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { readKit } from '#domain/kit/readKit.ts';
import footbridgeFile from '#tests/corpus/kits/footbridge.json' with { type: 'json' };
import { bridgeOver, granted, ground, heron, larchFord } from '../kit/heronKit.ts';
import { expectSoundLaunch } from './launchChecks.ts';

const footbridge = granted(readKit(footbridgeFile));

function sentencesOf(kit: Kit, other: Parameters<typeof ground>[0], wish = {}): string[] {
  const designed = designBridge(ground(other), kit, '', wish);
  return designed.ok ? [] : designed.reason.map(({ sentence }) => sentence);
}

describe('the bridge over Larch Ford', () => {
  const bridge = granted(designBridge(larchFord, heron, 'hash'));

  it('has eleven bays, six nose sections and a metre of bearing on each bank', () => {
    expect(bridge).toMatchObject({ bays: 11, length: 33, nose: 6, loadClass: 30, gap: 31 });
    expect(bridge.bearing).toEqual({ near: 1, far: 1 });
    expect(bridge.landsAt).toBe(32);
    expect(bridge.kit).toMatchObject({ name: 'heron', hash: 'hash', notForUse: true });
  });

  it('is launched after 2, 4, 6, 8 and 11 bays, by 6, 6, 6, 6 and 8 m, then by 9 and 9.5 m', () => {
    expect(bridge.stages.map(({ bays, metres }) => [bays, metres])).toEqual([
      [2, 6],
      [4, 6],
      [6, 6],
      [8, 6],
      [11, 8],
      [11, 9],
      [11, 9.5],
    ]);
  });

  it('lands in the fifth move, held by the deck of the four rear bays', () => {
    expect(bridge.stages.map(({ lands }) => lands).indexOf(true)).toBe(4);
    expect(bridge.stages[3]?.decked).toEqual([]);
    expect(bridge.stages[4]?.decked).toEqual([8, 9, 10, 11]);
    expect(bridge.stages[4]?.balance).toBeCloseTo(2.34, 2);
    expect(bridge.stages[3]?.balance).toBeCloseTo(2.76, 2);
  });

  it('takes three nose sections off after each of the last two moves', () => {
    expect(bridge.stages.map(({ noseOff }) => noseOff)).toEqual([
      [],
      [],
      [],
      [],
      [],
      [1, 2, 3],
      [4, 5, 6],
    ]);
  });

  it('needs 27 m behind the front rollers and the vehicle', () => {
    expect(bridge.roomNeeded - (heron.launch?.vehicleRoom ?? 0)).toBe(27);
  });

  it('lists parts that weigh what the launch masses say', () => {
    const kilograms = bridge.parts.reduce((sum, part) => sum + part.count * part.kilograms, 0);
    // Rollers, jacks and gear 3500; bearings 770; kerbs 11 x 50; ramps 1000.
    expect(kilograms).toBe(11 * (1150 + 950) + 6 * 280 + 3500 + 770 + 550 + 1000);
  });

  it('has nothing unknown', () => {
    expect(bridge.unknowns).toEqual([]);
  });
});

describe('any ground', () => {
  it.each(Array.from({ length: 81 }, (_, at) => [10 + at / 2]))(
    'a gap of %d m is bridged soundly or refused in a sentence',
    (gap) => {
      const asked = ground({ gap });
      const designed = designBridge(asked, heron, '');
      if (designed.ok) {
        expectSoundLaunch(designed.value, asked, heron);
      } else {
        expect(designed.reason.length).toBeGreaterThan(0);
        for (const { code, sentence } of designed.reason) {
          expect(code).toBe('bridge-impossible');
          expect(sentence).toMatch(/^[A-Z].*: .*\.$/);
        }
      }
      // The kit reaches 45 m less its bearings, and no further.
      expect(designed.ok).toBe(gap <= 43.2);
    },
  );

  it('is sound with any setbacks, masses and rules', () => {
    const setback = fc.double({ min: 0, max: 4, noNaN: true });
    const rules = fc.record({
      gap: fc.double({ min: 2, max: 44, noNaN: true }),
      near: setback,
      far: setback,
      bare: fc.integer({ min: 400, max: 3000 }),
      deck: fc.integer({ min: 0, max: 2000 }),
      nose: fc.integer({ min: 60, max: 900 }),
      section: fc.double({ min: 1, max: 5, noNaN: true }),
      lot: fc.integer({ min: 1, max: 4 }),
      noseOff: fc.integer({ min: 1, max: 4 }),
      deckEarly: fc.integer({ min: 0, max: 8 }),
      margin: fc.double({ min: 0, max: 3, noNaN: true }),
      longestMove: fc.double({ min: 12, max: 20, noNaN: true }),
    });
    let designs = 0;
    fc.assert(
      fc.property(rules, (any) => {
        const { lot, noseOff, deckEarly, margin, longestMove } = any;
        if (!heron.launch) throw new Error('launched');
        const kit: Kit = {
          ...heron,
          bay: { ...heron.bay, bare: any.bare, deck: any.deck },
          nose: { length: any.section, mass: any.nose, most: 12 },
          launch: {
            ...heron.launch,
            lot,
            noseOff,
            deckEarly,
            margin,
            longestMove,
            heaviestPush: 1e6,
          },
        };
        const asked = ground({
          gap: any.gap,
          near: { ...larchFord.near, setback: any.near },
          far: { ...larchFord.far, setback: any.far },
        });
        const designed = designBridge(asked, kit, '');
        if (designed.ok) {
          designs += 1;
          expectSoundLaunch(designed.value, asked, kit);
        } else {
          expect(designed.reason.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 300 },
    );
    expect(designs).toBeGreaterThan(100);
  });

  it('never needs fewer bays, nor carries a higher class, over a longer gap', () => {
    const gap = fc.double({ min: 3, max: 43.2, noNaN: true });
    fc.assert(
      fc.property(gap, gap, (one, other) => {
        const short = bridgeOver(Math.min(one, other));
        const long = bridgeOver(Math.max(one, other));
        expect(long.bays).toBeGreaterThanOrEqual(short.bays);
        expect(long.loadClass).toBeLessThanOrEqual(short.loadClass);
      }),
    );
  });

  it('does not lose a bay to the rounding of sums', () => {
    // 0.1 + 0.2 style: 31.2 + 0.9 + 0.9 is 33 to the millimetre, eleven bays.
    expect(bridgeOver(31.2).bays).toBe(11);
    expect(bridgeOver(31.201).bays).toBe(12);
  });
});

describe('wishes', () => {
  it('take a longer bridge and share what is over by both bearings', () => {
    const bridge = granted(designBridge(ground(), heron, '', { bays: 12 }));
    expect(bridge.bays).toBe(12);
    expect(bridge.bearing).toEqual({ near: 2.5, far: 2.5 });
    expectSoundLaunch(bridge, ground(), heron);
  });

  it('take a longer nose, and then fewer decks hold the balance', () => {
    const bridge = granted(designBridge(ground(), heron, '', { nose: 7 }));
    expect(bridge.nose).toBe(7);
    expect(bridge.stages.find(({ lands }) => lands)?.decked.length).toBeLessThan(4);
    expectSoundLaunch(bridge, ground(), heron);
  });

  it('are refused where they do not reach, do not hold or are not in the kit', () => {
    expect(sentencesOf(heron, {}, { bays: 10 })[0]).toContain('take at least 11 bays');
    expect(sentencesOf(heron, {}, { bays: 11.5 })[0]).toContain('whole bays');
    expect(sentencesOf(heron, {}, { bays: 16 })[0]).toContain('at most 15');
    expect(sentencesOf(heron, {}, { nose: 4 })[0]).toContain('ahead of the front rollers');
    expect(sentencesOf(heron, {}, { nose: 9 })[0]).toContain('at most 8 nose sections');
    expect(sentencesOf(heron, {}, { nose: 2.5 })[0]).toContain('whole');
  });
});

describe('limits that bind', () => {
  it('name the load class and what would free it', () => {
    const [sentence, ...more] = sentencesOf(heron, { loadClass: 40 });
    expect(more).toEqual([]);
    expect(sentence).toContain('carries class 30 and class 40 is asked');
    // Class 40 is carried up to 30 m, which is a gap of 30 - 0.9 - 0.9.
    expect(sentence).toContain('a gap of 28.2 m');
  });

  it('say when no length carries the class', () => {
    expect(sentencesOf(heron, { loadClass: 100 })[0]).toContain('no length of this kit');
  });

  it('name the room behind the bank', () => {
    const [sentence] = sentencesOf(heron, { roomBehind: 25 });
    const more = Number(/clear ([\d.]+) m more/.exec(sentence ?? '')?.[1]);
    // That much more does free it, and a decimetre less does not.
    expect(sentencesOf(heron, { roomBehind: 25 + more })).toEqual([]);
    expect(sentencesOf(heron, { roomBehind: 25 + more - 0.1 })).toHaveLength(1);
  });

  it('all come at once', () => {
    expect(sentencesOf(heron, { roomBehind: 25, loadClass: 40 })).toHaveLength(2);
  });

  it('name the push', () => {
    if (!heron.launch) throw new Error('launched');
    const kit = { ...heron, launch: { ...heron.launch, heaviestPush: 15_000 } };
    expect(sentencesOf(kit, {})[0]).toMatch(/pushes 18\.1 t and the kit allows 15\.0 t/);
  });

  it('name a kit that is all bearings', () => {
    const kit = { ...heron, bearing: { near: 30, far: 30 } };
    expect(sentencesOf(kit, {})[0]).toContain('take another kit');
  });
});

describe('what nobody has measured', () => {
  it('is named and never refused', () => {
    const bank = { kind: 'natural', height: null, setback: 0 } as const;
    const asked = ground({
      near: bank,
      far: bank,
      place: null,
      water: { depth: null, rise: null },
      roomBehind: null,
    });
    const { unknowns } = granted(designBridge(asked, heron, ''));
    expect(unknowns).toHaveLength(6);
    expect(unknowns[0]).toContain('36.0 m');
  });
});

describe('a floating bridge', () => {
  it.each([[6], [18], [41]])('over %d m is boomed out until it rests on both banks', (gap) => {
    const bridge = bridgeOver(gap, footbridge);
    const out = bridge.stages.reduce((sum, { metres }) => sum + metres, 0);
    expect(out).toBeCloseTo(gap + bridge.bearing.far, 3);
    expect(bridge.length - out).toBeCloseTo(bridge.bearing.near, 3);
    expect(bridge.stages.filter(({ lands }) => lands)).toHaveLength(1);
    expect(bridge.stages.every(({ balance }) => balance === null)).toBe(true);
    expect(bridge.stages.at(-1)?.bays).toBe(bridge.bays);
    expect(bridge.nose).toBe(0);
  });
});
