import { describe, expect, it } from 'vitest';
import { designBridge } from '#domain/bridge/design.ts';
import { readGround } from '#domain/bridge/readGround.ts';
import { readKit } from '#domain/kit/readKit.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import reedMere from '#tests/corpus/grounds/reedMere.json' with { type: 'json' };
import footbridgeFile from '#tests/corpus/kits/footbridge.json' with { type: 'json' };
import { granted } from '../kit/heronKit.ts';
import { everythingBefore, expectSoundOrder, graphOf } from './workChecks.ts';

const kit = granted(readKit(footbridgeFile));
const mere = granted(readGround(reedMere));

describe('a quite different kit: a floating footbridge', () => {
  it.each([
    [18, 9, 5],
    [41, 18, 9],
  ])('over %d m takes %d floats, boomed out %d times', (gap, bays, booms) => {
    const bridge = granted(designBridge({ ...mere, gap }, kit, ''));
    const work = granted(orderOfWork(bridge, kit));
    expectSoundOrder(work);
    expect(bridge.bays).toBe(bays);
    const moves = work.tasks.filter(({ effect }) => effect?.kind === 'move');
    expect(moves).toHaveLength(booms);
    const graph = graphOf(work);
    for (const { stage, bays: joined } of bridge.stages) {
      const before = everythingBefore(graph, `boom-${stage}`);
      for (let bay = 1; bay <= bays; bay += 1) {
        expect([bay, before.has(`walk-${bay}-right`)]).toEqual([bay, bay <= joined]);
      }
    }
  });

  it('anchors each lot of three once it is out, before the bridge goes much further', () => {
    const bridge = granted(designBridge({ ...mere, gap: 41 }, kit, ''));
    const graph = graphOf(granted(orderOfWork(bridge, kit)));
    // Bays 4 to 6 are out with booms 2 and 3; the fourth brings bays 7 and 8 and wants bay 4 anchored.
    expect(everythingBefore(graph, 'anchor-2')).toContain('boom-3');
    expect(everythingBefore(graph, 'anchor-2')).not.toContain('boom-4');
    expect(everythingBefore(graph, 'boom-4')).toContain('anchor-2');
    expect(everythingBefore(graph, 'boom-3')).not.toContain('anchor-2');
  });

  it('has neither nose nor rollers', () => {
    const work = granted(orderOfWork(granted(designBridge(mere, kit, '')), kit));
    const kinds = new Set(work.tasks.map(({ effect }) => effect?.kind));
    expect(kinds.has('nose')).toBe(false);
    expect(work.zones.some(({ id }) => id === 'rollers')).toBe(false);
  });
});
