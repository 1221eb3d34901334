import { describe, expect, it } from 'vitest';
import type { Run } from '#domain/bridge/statics/body.ts';
import { gravity } from '#domain/bridge/statics/centreOfGravity.ts';
import { reactionsOn } from '#domain/bridge/statics/reactions.ts';
import { tipSag } from '#domain/bridge/statics/tipSag.ts';

// Closed forms of the table of beams in Young and Budynas, Roark's Formulas for Stress and Strain (7th ed., table 8.1),
// and of the overhanging beams in the AISC Steel Construction Manual, table 3-23; quoted from memory. w is load per
// metre, l the length between supports, a the overhang, EI the bending stiffness.
const w = 400 * gravity;
const stiffness = 3e7;
const same = { nose: stiffness, bay: stiffness };

const run = (part: Run['part'], from: number, to: number): Run => ({
  part,
  from,
  to,
  kilograms: 400 * (to - from),
});
const level = { of: 'front', at: 0, newtons: 0 } as const;

describe('a cantilever', () => {
  it('sags at its tip by w a^4 / 8 EI under even load', () => {
    for (const a of [2, 7.5, 18]) {
      const sag = tipSag([run('nose', 0, a)], a, [level, level], same);
      expect(sag / ((w * a ** 4) / (8 * stiffness))).toBeCloseTo(1, 12);
    }
  });

  it('sags by w (a - b)^3 (4 a - (a - b)) / 24 EI when only the outer part is loaded', () => {
    const [a, outer] = [12, 5];
    const bare: Run = { part: 'bay', from: outer, to: a, kilograms: 1e-9 };
    const sag = tipSag([run('nose', 0, outer), bare], a, [level, level], same);
    // By superposition: all of it loaded, less the inner part loaded, which turns and carries the outer part down.
    const b = a - outer;
    const whole = (w * a ** 4) / (8 * stiffness);
    const inner = (w * b ** 4) / (8 * stiffness) + ((w * b ** 3) / (6 * stiffness)) * outer;
    expect(sag / (whole - inner)).toBeCloseTo(1, 9);
  });

  it('of two stiffnesses sags as the sum of each part bending by itself', () => {
    const [a, outer] = [10, 4];
    const stiff = { nose: 1e7, bay: 5e7 };
    const sag = tipSag([run('nose', 0, outer), run('bay', outer, a)], a, [level, level], stiff);
    const tip = (w * outer ** 4) / (8 * stiff.nose);
    // The inner part bears w, and at its end the shear w c and the moment w c^2 / 2 of the outer part c.
    const b = a - outer;
    const [shear, moment] = [w * outer, (w * outer ** 2) / 2];
    const down = (w * b ** 4) / 8 + (shear * b ** 3) / 3 + (moment * b ** 2) / 2;
    const turn = (w * b ** 3) / 6 + (shear * b ** 2) / 2 + moment * b;
    expect(sag / (tip + (down + turn * outer) / stiff.bay)).toBeCloseTo(1, 12);
  });
});

describe('a beam on two supports that overhangs one', () => {
  const over = (runs: Run[], l: number, a: number) => {
    const mass = runs.reduce((sum, one) => sum + one.kilograms, 0);
    const centre =
      a - runs.reduce((sum, one) => sum + (one.kilograms * (one.from + one.to)) / 2, 0) / mass;
    const bearers = reactionsOn(
      [
        { of: 'front', at: 0 },
        { of: 'rear', at: -l },
      ],
      mass,
      centre,
    );
    return { bearers, sag: tipSag(runs, a, bearers, same) };
  };

  it('carries w (l + a)^2 / 2 l at the support next to the overhang, and w (l^2 - a^2) / 2 l at the other', () => {
    const [l, a] = [9, 4];
    const { bearers } = over([run('nose', 0, a), run('bay', a, a + l)], l, a);
    expect(bearers[0].newtons).toBeCloseTo((w * (l + a) ** 2) / (2 * l), 6);
    expect(bearers[1].newtons).toBeCloseTo((w * (l ** 2 - a ** 2)) / (2 * l), 6);
  });

  it('sags by w a (3 a^3 + 4 a^2 l - l^3) / 24 EI at the tip under even load all over', () => {
    for (const [l, a] of [
      [9, 4],
      [12, 14],
      [6, 1],
    ] as const) {
      const { sag } = over([run('nose', 0, a), run('bay', a, a + l)], l, a);
      expect(sag).toBeCloseTo(
        (w * a * (3 * a ** 3 + 4 * a ** 2 * l - l ** 3)) / (24 * stiffness),
        9,
      );
    }
  });

  it('sags by w a^3 (4 l + 3 a) / 24 EI when only the overhang is loaded', () => {
    const [l, a] = [10, 6];
    const light: Run = { part: 'bay', from: a, to: a + l, kilograms: 1e-9 };
    const { sag } = over([run('nose', 0, a), light], l, a);
    expect(sag / ((w * a ** 3 * (4 * l + 3 * a)) / (24 * stiffness))).toBeCloseTo(1, 9);
  });

  it('rises by w l^3 a / 24 EI when only the span is loaded', () => {
    const [l, a] = [10, 6];
    const light: Run = { part: 'nose', from: 0, to: a, kilograms: 1e-9 };
    const { sag } = over([light, run('bay', a, a + l)], l, a);
    expect(-sag / ((w * l ** 3 * a) / (24 * stiffness))).toBeCloseTo(1, 9);
  });

  it('takes the load of a tail that reaches past the rear support as an overhang of its own', () => {
    // Overhangs alike on both sides, a = l / 2: by symmetry each support carries half.
    const [l, a] = [8, 4];
    const { bearers } = over([run('nose', 0, a), run('bay', a, 2 * a + l)], l, a);
    expect(bearers[0].newtons).toBeCloseTo(bearers[1].newtons, 6);
  });
});

describe('a simple beam', () => {
  it('carries a load at P b / l and P a / l on its supports', () => {
    const [ahead, behind] = reactionsOn(
      [
        { of: 'landing', at: 30 },
        { of: 'front', at: 0 },
      ],
      1000,
      12,
    );
    expect(ahead.newtons).toBeCloseTo((1000 * gravity * 12) / 30, 6);
    expect(behind.newtons).toBeCloseTo((1000 * gravity * 18) / 30, 6);
  });
});
