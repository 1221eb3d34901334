import { describe, expect, it } from 'vitest';
import { designBridge } from '#domain/bridge/design.ts';
import { footings } from '#domain/bridge/footings.ts';
import type { BankGround, Ground } from '#domain/bridge/ground.ts';
import { groundAdvice } from '#domain/bridge/groundAdvice.ts';
import { groundFields } from '#domain/bridge/groundFields.ts';
import { groundNumbers } from '#domain/bridge/groundNumbers.ts';
import { hangsOn } from '#domain/bridge/hangsOn.ts';
import { readGround } from '#domain/bridge/readGround.ts';
import { setbackRule } from '#domain/bridge/setbackRule.ts';
import { stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { waterTime } from '#domain/bridge/waterTime.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { granted, ground, heron, larchFord } from '../kit/heronKit.ts';
import { everythingBefore, expectSoundOrder, graphOf } from '../tasks/workChecks.ts';

const bridge = granted(designBridge(larchFord, heron, ''));
const advice = (other: Partial<Ground>, minutes: number | null = null) => {
  const stages = stageStatics(bridge, heron, other.rollerFall ?? 0);
  return groundAdvice({ ...larchFord, ...other }, heron, stages, minutes);
};
const codes = (other: Partial<Ground>, minutes: number | null = null) =>
  advice(other, minutes).map(({ code, bank }) => `${code} ${bank ?? ''}`.trim());
const bank = (other: Partial<BankGround>): BankGround => ({ ...larchFord.near, ...other });

describe('the numbers of a ground', () => {
  it('have a unit, a range and a reason each, and the file takes just that range', () => {
    for (const { field, kind, set } of groundFields) {
      const { unit, least, most, reason } = groundNumbers[kind];
      expect(unit.length).toBeGreaterThan(0);
      expect(reason).toMatch(/^[A-Z].*\.$/);
      for (const [value, allowed] of [
        [least, true],
        [most, true],
        [least - 1, false],
        [most + 1, false],
      ] as const) {
        const read = readGround(set(larchFord, value));
        expect([field, value, read.ok]).toEqual([field, value, allowed]);
      }
    }
  });

  it('are all read back as they were set', () => {
    for (const { get, set, kind } of groundFields) {
      expect(get(set(larchFord, groundNumbers[kind].most))).toBe(groundNumbers[kind].most);
    }
  });

  it('of an older ground file without the newer ones are unknown', () => {
    const unknown = groundFields
      .filter(({ get }) => get(larchFord) === null)
      .map(({ field }) => field);
    expect(unknown).toContain('wind');
    expect(unknown).toContain('near.strength');
    expect(unknown).not.toContain('gap');
  });
});

describe('what the answer hangs on', () => {
  const decides = (other: Partial<Ground>) =>
    hangsOn({ ...larchFord, ...other }, heron)
      .filter((one) => one.decides)
      .map(({ field }) => field);

  it('is the room behind where nobody measured it', () => {
    expect(decides({ roomBehind: null })).toContain('roomBehind');
    expect(decides({})).not.toContain('roomBehind');
  });

  it('is the height of a natural bank, not that of a made one for its setback', () => {
    const natural = bank({ kind: 'natural', height: null, setback: 2 });
    expect(decides({ far: natural })).toContain('far.height');
  });

  it('is what the ground bears, and never the depth of the water', () => {
    expect(decides({})).toContain('near.strength');
    const depth = hangsOn({ ...larchFord, water: { depth: null, rise: 0 } }, heron);
    expect(depth.find(({ field }) => field === 'water.depth')?.decides).toBe(false);
  });
});

describe('the ground', () => {
  it('at Larch Ford asks for nothing but the landing rollers set low', () => {
    expect(codes({})).toEqual(['landing-height far']);
  });

  it('asks for more setback on a high natural bank, less where its face is flat', () => {
    const natural = bank({ kind: 'natural', height: 4, setback: 5 });
    expect(codes({ near: natural })).toContain('setback near');
    // 1.5 x 4 m from the toe, which a face of 45 degrees brings 4 m forward: 2 m from the edge.
    expect(setbackRule({ ...natural, slope: 45 }, heron)).toBeCloseTo(2, 9);
    expect(codes({ near: { ...natural, slope: 45 } })).not.toContain('setback near');
    expect(setbackRule({ ...natural, height: null }, heron)).toBeNull();
  });

  it('asks for packing, cutting and waiting where falls and wind are beyond the kit', () => {
    expect(codes({ near: bank({ crossFall: 0.15 }) })).toContain('cross-fall near');
    expect(codes({ near: bank({ approach: { length: 20, slope: 0.2 } }) })).toContain(
      'approach near',
    );
    expect(codes({ rollerFall: -0.05 })).toContain('roller-fall');
    expect(codes({ wind: 15 })).toContain('wind');
    expect(codes({ wind: 12, rollerFall: 0.03 })).not.toContain('wind');
  });

  it('asks for a holdback where the bridge would run away', () => {
    expect(codes({ rollerFall: 0.08 })).toContain('hold-back near');
    expect(codes({ rollerFall: 0.04 })).not.toContain('hold-back near');
  });

  it('asks for wider footings where it bears too little', () => {
    const most = Math.max(
      ...stageStatics(bridge, heron, 0)
        .flatMap(({ mostReactions }) => mostReactions)
        .filter(({ of }) => of === 'front')
        .map(({ newtons }) => newtons),
    );
    const [near] = footings(stageStatics(bridge, heron, 0), heron, {
      ...larchFord,
      near: bank({ strength: 50 }),
    });
    expect(near?.newtons).toBe(most);
    expect(near?.area).toBeCloseTo(most / 50_000, 9);
    expect(near?.widen).toBe(true);
    expect(codes({ near: bank({ strength: 50 }) })).toContain('footing near');
    expect(codes({ near: bank({ strength: 200 }) })).not.toContain('footing near');
  });
});

describe('rising water', () => {
  const water = { depth: 2, rise: 0.04, level: 1.2, limit: 1.5 };

  it('leaves the time that its rise takes to the limit', () => {
    // 0.3 m at 0.04 m an hour: 7.5 hours.
    expect(waterTime({ ...larchFord, water })?.minutes).toBeCloseTo(450, 9);
    expect(waterTime({ ...larchFord, water: { ...water, level: 1.6 } })?.minutes).toBe(0);
    expect(waterTime({ ...larchFord, water: { ...water, rise: -0.1 } })?.minutes).toBeNull();
    expect(waterTime({ ...larchFord, water: { ...water, rise: null } })).toBeNull();
    expect(waterTime(larchFord)).toBeNull();
  });

  it('is held against the plan', () => {
    expect(codes({ water }, 400)).not.toContain('water');
    expect(codes({ water }, 500)).toContain('water');
    expect(advice({ water: { ...water, level: 2 } }, 60).at(-1)?.sentence).toContain('has to stop');
  });
});

describe('a soft bank', () => {
  it('adds its matting to the order of work, before the rollers', () => {
    const asked = ground({ far: { ...larchFord.far, soil: 'soft' } });
    const soft = granted(designBridge(asked, heron, ''));
    expect(soft.softBanks).toEqual(['far']);
    const work = granted(orderOfWork(soft, heron));
    expectSoundOrder(work);
    const ids = work.tasks.map(({ id }) => id);
    expect(ids.filter((id) => id.startsWith('matting'))).toEqual(['matting-far']);
    expect(everythingBefore(graphOf(work), 'landing-base')).toContain('matting-far');
    expect(granted(orderOfWork(bridge, heron)).tasks).toHaveLength(154);
  });
});
