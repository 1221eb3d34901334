import { describe, expect, it } from 'vitest';
import { launchMoment, launchReach } from '#client/drawing/launchMoment.ts';
import { bridgeOver, heron, larchFord } from '#tests/domain/kit/heronKit.ts';

const launching = { bridge: bridgeOver(31), kit: heron, ground: larchFord };
const at = (stage: number, into: number) => {
  const moment = launchMoment(launching, { stage, into });
  if (!moment) throw new Error(`no stage ${stage}`);
  return moment;
};

// Lengths by hand from the demo's outline: bays of 3 m, six nose sections of 3 m, moves of 6, 6, 6, 6, 8, 9 and 9.5 m.
describe('a launch at one moment', () => {
  it('has nose before bays, end to end, with its tip where it has come to', () => {
    const { nose, bays, front } = at(4, 2.5);
    expect(front).toBeCloseTo(18 + 2.5);
    const ends = [...nose, ...bays].map(({ from, to }) => [from, to]);
    for (const [row, [, to]] of ends.entries()) {
      expect(to).toBeCloseTo(row === 0 ? front : (ends[row - 1]?.[0] ?? Number.NaN));
    }
    expect([nose.length, bays.length]).toEqual([6, 8]);
  });

  it('says what was built and decked for this stage', () => {
    const { bays } = at(5, 0);
    const numbers = (fresh: 'fresh' | 'freshDeck') =>
      bays.filter((bay) => bay[fresh]).map(({ bay }) => bay);
    expect(numbers('fresh')).toEqual([9, 10, 11]);
    expect(numbers('freshDeck')).toEqual([8, 9, 10, 11]);
  });

  it('leaves out the nose that has come off', () => {
    const { nose, front } = at(7, 0);
    expect(nose.map(({ section }) => section)).toEqual([4, 5, 6]);
    expect(front).toBeCloseTo(41 - 9);
  });

  it('is nothing for a stage that there is not', () => {
    expect(launchMoment(launching, { stage: 9, into: 0 })).toBeNull();
  });
});

describe('the ground drawn for a launch', () => {
  it('holds tail and vehicle at the start, the foremost end at the end, and the room that was measured', () => {
    const { from, to } = launchReach(launching);
    expect(from).toBeLessThan(-40);
    expect(to).toBeGreaterThan(50.5 - 9);
  });
});
