import { describe, expect, it } from 'vitest';
import { layMilestones } from '#client/drawing/milestoneRows.ts';

const ahead = (task: string, p50: number, label = task) => ({
  task,
  label,
  p10: p50 - 5,
  p50,
  p80: p50 + 8,
  p90: p50 + 15,
});

describe('milestones on one line of time', () => {
  const laid = layMilestones([ahead('open', 300), ahead('seated', 220)], 200, 400, 7);

  it('stand in the order of their even chance', () => {
    expect(laid.rows.map(({ task }) => task)).toEqual(['seated', 'open']);
  });

  it('begin now or with the earliest of them, and end with the last, inside the paper', () => {
    expect(laid.from).toBe(200);
    expect(laid.to).toBe(315);
    for (const { p10, p50, p80, p90 } of laid.rows) {
      expect(p10).toBeGreaterThanOrEqual(8);
      expect([p10, p50, p80, p90]).toEqual([p10, p50, p80, p90].toSorted((a, b) => a - b));
      expect(p90).toBeLessThanOrEqual(392);
    }
  });

  it('have their label where their spread begins, or ends where the paper would be too short', () => {
    const [seated, open] = laid.rows;
    expect(seated).toMatchObject({ anchor: 'start', labelX: seated!.p10 });
    const long = layMilestones([ahead('a', 210), ahead('b', 300, 'x'.repeat(30))], 200, 400, 7);
    expect(long.rows[1]).toMatchObject({ anchor: 'end', labelX: long.rows[1]!.p90 });
    expect(open!.labelX).toBeGreaterThan(seated!.labelX);
  });

  it('stand for one that has no spread', () => {
    const sure = { task: 's', label: 's', p10: 5, p50: 5, p80: 5, p90: 5 };
    const { rows } = layMilestones([sure], 5, 300, 7);
    expect(rows[0]!.p10).toBe(rows[0]!.p90);
    expect(Number.isFinite(rows[0]!.p10)).toBe(true);
  });
});
