import { describe, expect, it } from 'vitest';
import type { Ground } from '#domain/bridge/ground.ts';
import { baysNeeded, lengthNeeded, loadClassAt } from '#domain/bridge/reach.ts';
import { readKit } from '#domain/kit/readKit.ts';
import heronFile from '#domain/kits/heron.json' with { type: 'json' };

const read = readKit(heronFile);
if (!read.ok) throw new Error('the demo kit is at fault');
const heron = read.value;
const feet = 0.3048;

describe('length of a panel bridge from the site', () => {
  // US Army FM 5-277 ch. 4: first bridge length is gap plus setbacks plus roller clearances, in whole bays of 10 ft.
  // Setback of a prepared abutment 3.5 ft and clearance 2.5 ft on each bank are quoted from memory.
  it('is 80 ft in eight bays over a gap of 60 ft with prepared abutments', () => {
    const bank = { kind: 'made', height: null, setback: 3.5 * feet } as const;
    const ground: Ground = {
      format: 'spanwright-ground',
      version: 1,
      name: 'Sixty feet',
      zone: 'UTC',
      place: null,
      gap: 60 * feet,
      near: bank,
      far: bank,
      roomBehind: null,
      water: { depth: null, rise: null },
      loadClass: 1,
    };
    const kit = {
      ...heron,
      bay: { ...heron.bay, length: 10 * feet },
      bearing: { near: 2.5 * feet, far: 2.5 * feet },
    };
    expect(lengthNeeded(ground, kit)).toBeCloseTo(72 * feet, 9);
    expect(baysNeeded(ground, kit)).toBe(8);
  });
});

describe('load class by span', () => {
  // scribd document 87793370, a one-page introduction to the panel bridge: longest span in feet for each British class, for
  // single, double and triple trusses of one storey and double and triple trusses of two.
  const classes = [9, 12, 18, 24, 30, 40, 50, 60, 70];
  const spans = [
    [90, 80, 60, 60, 50, 30],
    [150, 140, 110, 110, 100, 80, 60, 50, 40],
    [170, 160, 140, 140, 120, 110, 90, 80, 70],
    [180, 170, 160, 150, 140, 130, 110, 100, 90],
    [200, 190, 180, 170, 160, 150, 130, 120, 110],
  ];

  it.each(spans.map((row) => [row]))(
    'reads %j as a table of a kit, and never rises with length',
    (row) => {
      const table = new Map<number, number>();
      for (const [at, span] of row.entries()) {
        // Two classes with one span: the higher one counts.
        table.set(span, Math.max(table.get(span) ?? 0, classes[at] ?? 0));
      }
      const loadClasses = [...table]
        .sort(([a], [b]) => a - b)
        .map(([span, loadClass]) => ({ upTo: span * feet, loadClass }));
      const kit = { ...heron, loadClasses };
      expect(readKit(kit).ok).toBe(true);
      for (const [at, span] of row.entries()) {
        expect(loadClassAt(kit, span * feet)).toBeGreaterThanOrEqual(classes[at] ?? 0);
        const longer = loadClassAt(kit, (span + 0.5) * feet) ?? 0;
        expect(longer).toBeLessThan(classes[at] ?? 0);
      }
    },
  );
});
