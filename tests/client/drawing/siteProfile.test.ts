import { describe, expect, it } from 'vitest';
import { siteProfile } from '#client/drawing/siteProfile.ts';
import { bridgeOver, larchFord } from '#tests/domain/kit/heronKit.ts';

const bridge = bridgeOver(31);
const near = (more: object) => ({ ...larchFord, near: { ...larchFord.near, ...more } });
const face = (ground: typeof larchFord) => {
  const { near: edge, profile } = siteProfile(ground, bridge);
  return profile[1]!.x - edge.x;
};

describe('the site from the side', () => {
  it('has the face of a bank at the slope that was measured', () => {
    // A bank 5.4 m high at 45 degrees takes as much in length as in height.
    expect(face(near({ slope: 45 }))).toBeCloseTo(5.4, 9);
    expect(face(near({ slope: 90 }))).toBe(0);
    expect(face(near({ kind: 'natural', slope: 45 }))).toBeCloseTo(5.4, 9);
  });

  it('guesses it where it was not', () => {
    expect(face(near({ kind: 'made' }))).toBe(0);
    expect(face(near({ kind: 'natural' }))).toBeGreaterThan(0);
  });

  it('lets two flat faces meet, not cross', () => {
    const flat = { ...near({ slope: 5 }), far: { ...larchFord.far, slope: 5 } };
    const { profile } = siteProfile(flat, bridge);
    expect(profile.map(({ x }) => x)).toEqual([...profile.map(({ x }) => x)].sort((a, b) => a - b));
  });

  it('stands the far bank higher by the difference of the heights over one water', () => {
    expect(siteProfile(larchFord, bridge).far.y).toBeCloseTo(5.1 - 5.4, 9);
  });
});
