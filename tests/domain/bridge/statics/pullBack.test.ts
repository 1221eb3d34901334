import { describe, expect, it } from 'vitest';
import type { Bridge } from '#domain/bridge/bridge.ts';
import { designBridge } from '#domain/bridge/design.ts';
import { heldNow } from '#domain/bridge/statics/heldNow.ts';
import { pullBack } from '#domain/bridge/statics/pullBack.ts';
import { checkStages } from '#tests/support/checkStages.ts';
import { bridgeOver, granted, heron, larchFord } from '../../kit/heronKit.ts';

const bridge = granted(designBridge(larchFord, heron, ''));

describe('a launch that stops half-way', () => {
  it('is held by the balance at that very place', () => {
    // Move 4 of 6 m ends 2.757 m behind; two metres into it there are 4 m more.
    const held = heldNow(bridge, heron, { stage: 4, into: 2 }, 0);
    expect(held?.margin).toBeCloseTo(2.757 + 4, 3);
    expect(held?.mayGoOn).toBeCloseTo(2.757 + 4 - 2, 3);
    expect(held?.moved).toBe(20);
    expect(held?.landed).toBe(false);
    const weight = (held?.kilograms ?? 0) * 9.80665;
    const sum = held?.reactions.reduce((all, { newtons }) => all + newtons, 0);
    expect(sum).toBeCloseTo(weight, 3);
    expect(held?.push?.newtons).toBeCloseTo(0.05 * weight, 3);
  });

  it('rests on the far rollers too once landed', () => {
    const held = heldNow(bridge, heron, { stage: 6, into: 5 }, 0);
    expect(held?.landed).toBe(true);
    expect(held?.sag).toBeNull();
    expect(held?.reactions.map(({ of }) => of)).toEqual(['landing', 'front']);
  });

  it('is nothing where there is no such stage', () => {
    expect(heldNow(bridge, heron, { stage: 9, into: 0 }, 0)).toBeNull();
    expect(pullBack(bridge, heron, { stage: 1, into: 0 })).toEqual([]);
  });
});

describe('pulling back', () => {
  it('undoes the moves, last first, with what held them', () => {
    const back = pullBack(bridge, heron, { stage: 5, into: 3 });
    expect(back.map(({ stage, metres, bays }) => [stage, metres, bays])).toEqual([
      [5, 3, 11],
      [4, 6, 8],
      [3, 6, 6],
      [2, 6, 4],
      [1, 6, 2],
    ]);
    expect(back[0]?.decksOff).toEqual([8, 9, 10, 11]);
    expect(back[0]?.baysOff).toEqual([11, 10, 9]);
  });

  it('puts the nose back on before the tip leaves the far rollers', () => {
    const back = pullBack(bridge, heron, { stage: 7, into: 9.5 });
    expect(back.map(({ stage, noseOn }) => [stage, noseOn])).toEqual([
      [7, []],
      [6, [3, 2, 1]],
      [5, []],
      [4, []],
      [3, []],
      [2, []],
      [1, []],
    ]);
  });

  it('from anywhere is approved as a launch read backwards, with the margins of the kit', () => {
    for (const gap of [14, 22, 31, 38, 43]) {
      const any = bridgeOver(gap);
      for (const { stage, metres, lands } of any.stages) {
        const back = pullBack(any, heron, { stage, into: metres });
        const landing = any.stages.find((one) => one.lands)?.stage ?? 0;
        for (const move of back) {
          if (move.stage <= landing) expect(move.margin).toBeGreaterThanOrEqual(2 - 1e-3);
          else expect(move.margin).toBeGreaterThan(0);
        }
        expect(back.reduce((sum, move) => sum + move.metres, 0)).toBeCloseTo(
          any.stages[stage - 1]?.moved ?? 0,
          3,
        );
        // Forwards again, what was pulled back from the landing is the launch itself.
        if (lands) {
          const forwards = back
            .toReversed()
            .map(({ stage: number, metres: gone, bays, decked }) => ({
              ...any.stages[number - 1],
              metres: gone,
              bays,
              decked: [...decked],
            })) as Bridge['stages'];
          expect(checkStages({ ...any, stages: forwards }, heron, null)).toEqual([]);
        }
      }
    }
  });
});
