import { describe, expect, it } from 'vitest';
import { choices } from '#domain/bridge/choices.ts';
import { designBridge } from '#domain/bridge/design.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { checkStages } from '#tests/support/checkStages.ts';
import { ground, heron, larchFord } from '../kit/heronKit.ts';

describe('the choice of bridges', () => {
  const found = choices(larchFord, heron, 'hash');

  it('at Larch Ford advises eleven bays and says why not twelve', () => {
    const [first, second, ...more] = found.fitting;
    expect(first?.bridge).toMatchObject({ bays: 11, nose: 6 });
    expect(first).toMatchObject({ against: null, classMargin: 0, roomOver: 4, moves: 7 });
    expect(first).toMatchObject({ people: 34, onSite: 46, loads: 6, tasks: 154 });
    expect(second?.bridge.bays).toBe(12);
    expect(second?.against).toMatch(/min more at the least, and 2\.1 t more to bring/);
    expect(more).toEqual([]);
  });

  it('says of every length and nose that it fits or what rules it out', () => {
    for (let bays = 11; bays <= heron.bay.most; bays += 1) {
      const fits = found.fitting.some(({ bridge }) => bridge.bays === bays);
      const out = found.ruledOut.find((one) => one.bays === bays && one.nose === null);
      expect([bays, fits]).toEqual([bays, out === undefined]);
      expect(out?.limits.length ?? 1).toBeGreaterThan(0);
    }
    // Class 30 is carried up to 36 m, twelve bays.
    expect(found.ruledOut.find(({ bays }) => bays === 13)?.limits[0]).toContain('carries class 20');
  });

  it('never advises one that is slower than another', () => {
    for (const gap of [12, 20, 28, 40]) {
      const { fitting } = choices(ground({ gap }), heron, '');
      const minutes = fitting.map(({ leastMinutes }) => leastMinutes);
      expect(minutes).toEqual([...minutes].sort((a, b) => a - b));
      for (const { bridge } of fitting) expect(checkStages(bridge, heron, null)).toEqual([]);
    }
  });

  it('is empty with a reason where nothing reaches', () => {
    const none = choices(ground({ gap: 60 }), heron, '');
    expect(none.fitting).toEqual([]);
    expect(none.ruledOut[0]?.limits[0]).toContain('at most 15');
  });

  it('counts a longer nose as a choice of its own where it saves a move', () => {
    const { lot, ...launch } = heron.launch ?? { lot: 1 };
    const kit = { ...heron, launch } as Kit;
    const { fitting } = choices(ground({ gap: 31 }), kit, '');
    for (const one of fitting) {
      const shorter = fitting.find(
        ({ bridge }) => bridge.bays === one.bridge.bays && bridge.nose < one.bridge.nose,
      );
      expect(shorter === undefined || shorter.moves > one.moves).toBe(true);
      expect(designBridge(ground({ gap: 31 }), kit, '', one.bridge).ok).toBe(true);
    }
  });
});
