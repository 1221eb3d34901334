import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bridgeOver, workOver } from '../kit/heronKit.ts';
import { everythingBefore, expectSoundOrder, graphOf, taskOf } from './workChecks.ts';

const gaps = Array.from({ length: 34 }, (_, at) => 10 + at);

describe('the order of work over any gap the kit reaches', () => {
  it.each(gaps)('is sound over %d m', (gap) => {
    expectSoundOrder(workOver(gap));
  });

  it.each(gaps)('follows the stages, decks and nose of the bridge over %d m', (gap) => {
    const bridge = bridgeOver(gap);
    const work = workOver(gap);
    const graph = graphOf(work);
    const ids = new Set(work.tasks.map(({ id }) => id));
    let built = 0;
    for (const { stage, bays, decked, noseOff = [], lands } of bridge.stages) {
      const before = everythingBefore(graph, `move-${stage}`);
      for (let bay = 1; bay <= bridge.bays; bay += 1) {
        expect([bay, before.has(`bay-${bay}-left`)]).toEqual([bay, bay <= bays]);
        expect([bay, before.has(`brace-${bay}`)]).toEqual([bay, bay <= bays]);
        if (bay > built && stage > 1) {
          const own = everythingBefore(graph, `bay-${bay}-left`);
          expect(own.has(`move-${stage - 1}`)).toBe(true);
        }
      }
      expect(decked.filter((bay) => !before.has(`deck-${bay}`))).toEqual([]);
      expect(before.has('landing-level')).toBe(
        stage >= bridge.stages.findIndex((one) => one.lands) + 1,
      );
      for (const section of noseOff) {
        expect(everythingBefore(graph, `nose-off-${section}`)).toContain(`move-${stage}`);
        if (ids.has(`move-${stage + 1}`)) {
          const next = everythingBefore(graph, `move-${stage + 1}`);
          expect(next).toContain(`nose-off-${section}`);
        }
      }
      const move = taskOf(work, `move-${stage}`);
      expect(move.effect).toMatchObject({ kind: 'move', stage, lands });
      built = bays;
    }
    expect(ids.has(`move-${bridge.stages.length + 1}`)).toBe(false);
    expect(ids.has(`bay-${bridge.bays + 1}-left`)).toBe(false);
    const off = work.tasks.filter(({ effect }) => effect?.kind === 'nose-off');
    expect(off).toHaveLength(bridge.nose);
    const decks = work.tasks.flatMap(({ effect }) => (effect?.kind === 'deck' ? effect.bays : []));
    expect(decks.sort((a, b) => a - b)).toEqual(
      Array.from({ length: bridge.bays }, (_, at) => at + 1),
    );
  });

  it('weighs all loads together as much as all parts', () => {
    fc.assert(
      fc.property(fc.double({ min: 8, max: 43.2, noNaN: true }), (gap) => {
        const tonnes = workOver(gap).loads.reduce((sum, load) => sum + (load.tonnes ?? 0), 0);
        const kilograms = bridgeOver(gap).parts.reduce(
          (sum, part) => sum + part.count * part.kilograms,
          0,
        );
        expect(tonnes).toBeCloseTo(kilograms / 1000, 6);
      }),
      { numRuns: 30 },
    );
  });
});
