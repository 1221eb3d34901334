import { describe, expect, it } from 'vitest';
import { thinned } from '#server/live/thinned.ts';

const counted = (count: number) => Array.from({ length: count }, (_, place) => place);
const none = () => false;

describe('a long history', () => {
  it('is left as it is where a page can show every point', () => {
    expect(thinned(counted(300), none)).toEqual(counted(300));
    expect(thinned([], none)).toEqual([]);
  });

  it('keeps its first and last point and some hundreds between', () => {
    const thin = thinned(counted(2_000), none);
    expect([thin[0], thin.at(-1)]).toEqual([0, 1_999]);
    expect(thin.length).toBeGreaterThan(200);
    expect(thin.length).toBeLessThanOrEqual(301);
  });

  it('keeps every point that a mark stands on', () => {
    const marks = new Set([7, 1_001, 1_998]);
    const thin = thinned(counted(2_000), (point) => marks.has(point));
    for (const mark of marks) expect(thin).toContain(mark);
    expect(thin).toEqual(thin.toSorted((one, other) => one - other));
  });
});
