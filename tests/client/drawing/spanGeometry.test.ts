import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spanGeometry } from '#client/drawing/spanGeometry.ts';
import { partAt, samePart, spanParts } from '#client/drawing/spanParts.ts';
import { spanOf } from '#domain/progress/views/span.ts';
import { bridge, ground, state } from '../fixtures/larchFord.ts';

const span = spanOf(state);
const geometry = spanGeometry(ground, bridge, span);

describe('the side view, measured', () => {
  it('has the gap that was measured between its edges', () => {
    expect(geometry.far.x - geometry.near.x).toBeCloseTo(31);
  });

  it('puts the landing roller where the tip lands, symmetric to the front rollers', () => {
    // 32 m from roller to roller over a gap of 31 m: half a metre on each bank.
    expect(geometry.rollers.far).toBe(32);
    expect(geometry.near.x).toBeCloseTo(0.5);
  });

  it('has the tip as far ahead of the rollers as the bridge has moved', () => {
    expect(span.moved).toBe(24);
    expect(geometry.tip).toBeCloseTo(24);
    // 8 m to land, as the next stage of the launch moves.
    expect(bridge.landsAt - geometry.tip).toBeCloseTo(8);
  });

  it('lays bays behind the nose, end to end, bay 1 first', () => {
    expect(geometry.bays[0]?.to).toBeCloseTo(24 - 18);
    for (const [index, bay] of geometry.bays.entries()) {
      expect(bay.to - bay.from).toBeCloseTo(3);
      if (index > 0) expect(bay.to).toBeCloseTo(geometry.bays[index - 1]!.from);
    }
    expect(geometry.tail).toBeCloseTo(24 - 18 - 33);
  });

  it('spans the gap with both ends on the banks once all moves are made', () => {
    const moved = bridge.stages.at(-1)!.moved;
    const end = spanGeometry(ground, bridge, { ...span, moved, landed: true });
    expect(end.tail).toBeLessThan(end.near.x);
    expect(end.bays[0]!.to).toBeGreaterThan(end.far.x);
  });

  it('rests lower by the height of the rollers where it is seated', () => {
    const seated = { ...span, landed: true, seated: { near: true, far: true } };
    const down = spanGeometry(ground, bridge, seated);
    expect(down.bottom(0)).toBe(0);
    expect(down.bottom(32)).toBeCloseTo(down.far.y);
    expect(geometry.bottom(0)).toBeGreaterThan(0);
  });

  it('has straight walls for made abutments and slopes for natural banks', () => {
    const made = { ...ground, near: { ...ground.near, kind: 'made' as const } };
    expect(spanGeometry(made, bridge, span).profile[1]!.x).toBe(geometry.near.x);
    expect(geometry.profile[1]!.x).toBeGreaterThan(geometry.near.x);
  });

  it('says when depth or heights are only guessed', () => {
    const unknown = {
      ...ground,
      near: { ...ground.near, height: null },
      water: { depth: null, rise: 0.1 },
    };
    const guessed = spanGeometry(unknown, bridge, span);
    expect(guessed).toMatchObject({ depthKnown: false, heightsKnown: false });
    expect(guessed.water).not.toBeNull();
    expect(geometry).toMatchObject({ depthKnown: true, heightsKnown: true });
  });

  it('draws no water in a dry gap', () => {
    expect(
      spanGeometry({ ...ground, water: { depth: 0, rise: 0 } }, bridge, span).water,
    ).toBeNull();
  });

  it('floats a floated bridge on the water, and on no rollers of the bank', () => {
    const floated = { ...bridge, manner: 'floated' as const, nose: 0, noseLength: 0 };
    const view = spanGeometry(ground, floated, { ...span, nose: [] });
    expect(view.bottom(10)).toBeLessThan(view.near.y);
    expect(view.bottom(10)).toBeGreaterThan(view.water!);
  });
});

describe('touching the side view', () => {
  it('finds some part wherever it is touched, and one that can be stepped to', () => {
    const parts = spanParts(geometry);
    fc.assert(
      fc.property(fc.double({ min: -100, max: 100, noNaN: true }), (x) => {
        const part = partAt(geometry, x);
        expect(parts.some((one) => samePart(one, part))).toBe(true);
      }),
    );
  });

  it('finds the bay under the finger', () => {
    const bay = geometry.bays[8]!;
    expect(partAt(geometry, (bay.from + bay.to) / 2)).toEqual({ kind: 'bay', bay: 9 });
  });

  it('finds the banks beyond the bridge', () => {
    expect(partAt(geometry, geometry.from)).toEqual({ kind: 'bank', bank: 'near' });
    expect(partAt(geometry, geometry.to)).toEqual({ kind: 'bank', bank: 'far' });
  });
});
