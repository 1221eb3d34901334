import { describe, expect, it } from 'vitest';
import { waterRescue } from '#domain/bridge/safety/ringBuoys.ts';

const foot = 0.3048;

// 29 CFR 1926.106: ring buoys with at least 90 ft of line, not more than 200 ft apart, and at least one lifesaving
// skiff at once available. The numbers of buoys for a run with one at each end are reckoned by hand from that.
describe('ring buoys over water', () => {
  it.each([
    [80, 2],
    [200, 2],
    [201, 3],
    [400, 3],
    [401, 4],
  ])('along %d ft are %d', (feet, buoys) => {
    expect(waterRescue(feet * foot)?.buoys).toBe(buoys);
  });

  it('have 90 ft of line, stand at most 200 ft apart, and a boat is there', () => {
    const rescue = waterRescue(30);
    expect((rescue?.line ?? 0) / foot).toBeCloseTo(90, 9);
    expect((rescue?.apart ?? 0) / foot).toBeCloseTo(200, 9);
    expect(rescue?.boats).toBe(1);
  });
});
