import { describe, expect, it } from 'vitest';
import { exposure } from '#domain/bridge/safety/exposure.ts';
import { latestArrivals, openingIfLate } from '#domain/bridge/stores/arrivals.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { granted, workOver } from '../../kit/heronKit.ts';

const work = workOver(31);
const plan = granted(makePlan(work, { shape: 'pert', crews: true, effort: 1 }));
const arrivals = latestArrivals(work, plan);

describe('the latest arrival of a load', () => {
  it('is not before it is planned nor before its first task may wait', () => {
    for (const { planned, needed, latest } of arrivals) {
      expect(latest ?? 0).toBeGreaterThanOrEqual((needed ?? 0) - 1e-6);
      expect(needed ?? 0).toBeGreaterThanOrEqual(planned - 1e-6);
    }
  });

  it('does not make the opening later, and a minute more does', () => {
    for (const { load, latest } of arrivals) {
      const opens = (arrives: number) => openingIfLate(work, plan, load, arrives);
      expect(opens(0)).toBeCloseTo(plan.minutesToOpen, 6);
      expect(opens(latest ?? 0)).toBeCloseTo(plan.minutesToOpen, 6);
      expect(opens((latest ?? 0) + 1)).toBeCloseTo(plan.minutesToOpen + 1, 6);
    }
  });
});

describe('exposure', () => {
  it('is the time of all people in a zone, and that of keep-off work in it', () => {
    const zones = exposure(work, plan);
    expect(zones.map(({ zone }) => zone)).toEqual(work.zones.map(({ id }) => id));
    for (const { zone, personMinutes, moving, mostPeople } of zones) {
      let [all, near] = [0, 0];
      for (const { task, crews, start, finish } of plan.tasks) {
        const own = work.tasks.find(({ id }) => id === task);
        if (own?.zones.includes(zone)) {
          const minutes = crews.reduce((sum, { people }) => sum + people * (finish - start), 0);
          all += minutes;
          if (own.keepOff) near += minutes;
        }
      }
      expect(personMinutes).toBeCloseTo(all, 6);
      expect(moving).toBeCloseTo(near, 6);
      const room = work.zones.find(({ id }) => id === zone)?.room ?? Number.POSITIVE_INFINITY;
      expect(mostPeople).toBeLessThanOrEqual(room);
    }
    expect(zones.find(({ zone }) => zone === 'ahead')?.moving).toBeGreaterThan(0);
    expect(zones.find(({ zone }) => zone === 'stores')?.moving).toBe(0);
  });
});
