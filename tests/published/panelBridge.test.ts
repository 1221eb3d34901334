import { describe, expect, it } from 'vitest';
import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { groundAdvice } from '#domain/bridge/groundAdvice.ts';
import { loadClassAt } from '#domain/bridge/reach.ts';
import { setbackRule } from '#domain/bridge/setbackRule.ts';
import { stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { carrying } from '#domain/bridge/stores/carrying.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { readKit } from '#domain/kit/readKit.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import doubleFile from '#tests/corpus/kits/panelDouble.json' with { type: 'json' };
import singleFile from '#tests/corpus/kits/panelSingle.json' with { type: 'json' };
import { checkStages } from '#tests/support/checkStages.ts';

// The panel bridge of US Army FM 5-277 (9 May 1986, public domain) as a kit, from published figures only. Masses and
// lifting parties of ch. 1 and appendix A are quoted from memory; what is less sure than that is not in the kit.
const foot = 0.3048;
const pound = 0.45359237;
const shortTon = 2000 * pound;

function kitOf(json: unknown): Kit {
  const read = readKit(json);
  if (!read.ok) throw new Error(JSON.stringify(read.reason));
  return read.value;
}
const single = kitOf(singleFile);
const double = kitOf(doubleFile);

const bank = { kind: 'made', height: null, setback: 0 } as const;
/** A ground that a bridge of so many feet just fits, with rollers that far apart. */
const groundFor = (feet: number, other: Partial<Ground> = {}): Ground => ({
  format: 'spanwright-ground',
  version: 1,
  name: `${feet} ft`,
  zone: 'UTC',
  place: null,
  gap: (feet - 5) * foot,
  near: bank,
  far: bank,
  roomBehind: null,
  water: { depth: null, rise: null },
  loadClass: 1,
  ...other,
});

describe('the masses of a panel bridge', () => {
  it('add up to what a bay and a nose section weigh', () => {
    // Appendix A, from memory: 2.76 short tons for a bay of single truss, 3.41 of double, about 1.0 for a nose section.
    // The parts that could be read make 2.65 and 1.0: clamps, frames and tie plates are missing, hence the tolerance.
    const tons = ({ bare, deck }: Kit['bay']) => (bare + deck) / shortTon;
    expect(Math.abs(tons(single.bay) / 2.76 - 1)).toBeLessThan(0.06);
    expect(Math.abs(tons(double.bay) / 3.41 - 1)).toBeLessThan(0.06);
    expect(Math.abs((single.nose?.mass ?? 0) / shortTon - 1)).toBeLessThan(0.03);
    // Panels 1154, floor beams 1236, deck bearers 1574, planks 650, kerbs 324, struts 88, cross braces 136, pins and clamps
    // about 84: 5246 lb.
    expect(Math.abs((single.bay.bare + single.bay.deck) / pound - 5246)).toBeLessThan(10);
  });

  it('are shared as the lifting parties share them', () => {
    // 577 lb by six, 618 lb by eight, 260 lb by four.
    const bridge = designBridge(groundFor(60), single, '');
    const shares = bridge.ok ? carrying(single, bridge.value, 20) : [];
    const share = (name: string) => (shares.find(({ part }) => part === name)?.share ?? 0) / pound;
    expect(share('Girder panel')).toBeCloseTo(96.2, 1);
    expect(Math.abs(share('Floor beam') - 77.3)).toBeLessThan(0.06);
    expect(share('Deck bearer')).toBeCloseTo(65, 1);
  });

  it('are more than the design standard lets those parties lift, which is warned of and never refused', () => {
    const bridge = designBridge(groundFor(60), single, '');
    const warned = bridge.ok
      ? carrying(single, bridge.value, 8).filter(({ warnings }) => warnings.length)
      : [];
    expect(warned.map(({ part }) => part)).toEqual(
      expect.arrayContaining(['Girder panel', 'Floor beam']),
    );
  });
});

describe('its load classes', () => {
  // scribd document 87793370: longest span for each British class; test form: never falls with more trusses.
  it('never fall with a second truss, nor rise with length', () => {
    for (let feet = 30; feet <= 90; feet += 10) {
      const class1 = loadClassAt(single, feet * foot) ?? 0;
      const class2 = loadClassAt(double, feet * foot) ?? 0;
      expect(class2).toBeGreaterThanOrEqual(class1);
      expect(loadClassAt(single, (feet + 10) * foot) ?? 0).toBeLessThanOrEqual(class1);
    }
  });
});

describe('its site', () => {
  // FM 5-277 ch. 3 and 4: approaches at most 1 in 10; rollers level or within 1 in 30 along the bridge; setback 3.5 ft
  // at a prepared abutment, one and a half times the height of the bank from its toe otherwise (the last two from memory).
  it('takes setbacks, approaches and roller lines as the manual does', () => {
    expect(setbackRule(bank, single)).toBeCloseTo(3.5 * foot, 3);
    const steep = { ...bank, kind: 'natural', height: 10 * foot, slope: 90 } as const;
    expect(setbackRule(steep, single)).toBeCloseTo(15 * foot, 6);
    const codes = (other: Partial<Ground>) =>
      groundAdvice(groundFor(60, other), single, [], null).map(({ code }) => code);
    expect(codes({ near: { ...bank, approach: { length: 45.7, slope: 0.11 } } })).toContain(
      'approach',
    );
    expect(codes({ near: { ...bank, approach: { length: 45.7, slope: 0.1 } } })).not.toContain(
      'approach',
    );
    expect(codes({ rollerFall: 1 / 29 })).toContain('roller-fall');
    expect(codes({ rollerFall: 1 / 31 })).not.toContain('roller-fall');
  });

  it('bridges 60 ft between prepared abutments with 80 ft', () => {
    // 60 + 3.5 + 3.5 + 2.5 + 2.5 = 72, in whole bays of 10 ft.
    const abutment = { ...bank, setback: 3.5 * foot };
    const asked = groundFor(60, { gap: 60 * foot, near: abutment, far: abutment });
    const bridge = designBridge(asked, single, '');
    expect(bridge.ok && bridge.value.length / foot).toBeCloseTo(80, 3);
  });
});

describe('its launch', () => {
  // The rule of FM 5-277: the centre of gravity stays behind the front rollers until the nose is over the landing
  // rollers. Sums by hand in short tons for 80 ft between rollers, eight bays and nose sections of 10 ft: 5.04 ft behind
  // with six sections at 1.0 and bays at 2.76; with five, 2.00 ft ahead; with five and the front three bays bare at
  // 1.45, 0.21 ft behind; with five and all bays bare, 9.58 ft ahead.
  const weighed = (bare: number, deck: number, deckEarly: number): Kit => ({
    ...single,
    bay: { ...single.bay, bare: bare * shortTon, deck: deck * shortTon },
    nose: { length: 10 * foot, mass: shortTon, most: 10 },
    launch: { ...(single.launch as NonNullable<Kit['launch']>), deckEarly },
  });
  const landing = (kit: Kit, nose?: number) => {
    const bridge = designBridge(groundFor(80), kit, '', nose === undefined ? {} : { nose });
    const stage = bridge.ok
      ? stageStatics(bridge.value, kit, 0).find(({ lands }) => lands)
      : undefined;
    return { bridge, margin: (stage?.margin ?? 0) / foot, decked: stage?.decked ?? [] };
  };

  it('with bays all alike takes six nose sections, 5.04 ft behind, and five tip by 2.00 ft', () => {
    const alike = weighed(2.76, 0.001, 0);
    const found = landing(alike);
    expect(found.bridge.ok && found.bridge.value.nose).toBe(6);
    expect(Math.abs(found.margin - 5.04)).toBeLessThan(0.05);
    const five = landing(alike, 5).bridge;
    // 2.00 ft is 0.6 m.
    expect(five.ok ? '' : five.reason[0]?.sentence).toContain('0.6 m ahead of the front rollers');
  });

  it('takes five with the front three bays bare, 0.21 ft behind, and finds those decks by itself', () => {
    const found = landing(weighed(1.45, 1.31, 8), 5);
    expect(found.decked.length).toBeGreaterThan(0);
    expect(found.decked.at(-1)).toBe(8);
    const three = landing(weighed(1.45, 1.31, 5), 5);
    expect(three.margin).toBeGreaterThanOrEqual(0);
    if (three.decked.length === 5) expect(Math.abs(three.margin - 0.21)).toBeLessThan(0.05);
    // Those that it decks are the fewest: with one less it tips.
    const less = landing(weighed(1.45, 1.31, three.decked.length - 1), 5).bridge;
    expect(less.ok).toBe(false);
  });

  it('never goes with five and all bays bare: 9.58 ft ahead', () => {
    const bare = landing(weighed(1.45, 1.31, 0), 5).bridge;
    // 9.58 ft is 2.9 m.
    expect(bare.ok ? '' : bare.reason[0]?.sentence).toContain('2.9 m ahead of the front rollers');
  });

  it.each([
    [40, single],
    [60, single],
    [80, single],
    [100, double],
  ])(
    'over %d ft is approved by a checker of moments, in any room, and can be worked',
    (feet, kit) => {
      let noses = 0;
      for (const roomBehind of [null, 40, 30, 25]) {
        const bridge = designBridge(groundFor(feet, { roomBehind }), kit, '');
        if (bridge.ok) {
          expect(checkStages(bridge.value, kit, roomBehind)).toEqual([]);
          expect(orderOfWork(bridge.value, kit).ok).toBe(true);
          noses = Math.max(noses, bridge.value.nose);
        }
      }
      expect(noses).toBeGreaterThan(0);
    },
  );

  it('takes no shorter a nose for a longer bridge of one kind', () => {
    const nose = (feet: number) => {
      const bridge = designBridge(groundFor(feet), single, '');
      return bridge.ok ? bridge.value.nose : 0;
    };
    expect(nose(60)).toBeGreaterThanOrEqual(nose(40));
    expect(nose(80)).toBeGreaterThanOrEqual(nose(60));
  });
});
