import { describe, expect, it } from 'vitest';
import { clockTicks, ticksEvery } from '#client/drawing/clockTicks.ts';

const at = (time: string): number => Date.parse(`2026-11-25T${time}:00Z`);

describe('ticks of a clock', () => {
  it('fall on round times, whenever the build starts', () => {
    // 07:07 to 07:41: the quarters are 8 and 23 minutes after the start.
    expect(ticksEvery(at('07:07'), 0, 34, 15)).toEqual([8, 23]);
  });

  it('include both ends', () => {
    expect(ticksEvery(at('07:00'), 0, 30, 15)).toEqual([0, 15, 30]);
  });

  it('become fewer as the time to show grows', () => {
    for (const length of [20, 90, 400, 2000]) {
      expect(clockTicks(at('07:07'), 0, length, 6).length).toBeLessThanOrEqual(7);
    }
  });
});
